// Sorts and filters the table of jobs in the page itself: no server, no library. Without it the table is whole as it is.
'use strict';
(() => {
  const table = document.getElementById('jobs');
  const body = table.tBodies[0];
  const rows = Array.from(body.rows);
  const search = document.getElementById('search');
  const shown = document.getElementById('shown');
  const texts = new Map(rows.map((row) => [row, row.textContent.toLowerCase()]));
  const natural = new Intl.Collator('en', { numeric: true });

  const chosen = (name) =>
    new Set(
      Array.from(document.querySelectorAll(`input[name="${name}"]:checked`), (input) => input.value),
    );

  const filter = () => {
    const words = search.value.toLowerCase().split(/\s+/).filter(Boolean);
    const statuses = chosen('status');
    const deeds = chosen('done');
    let count = 0;
    for (const row of rows) {
      const fits =
        statuses.has(row.dataset.status) &&
        deeds.has(row.dataset.done) &&
        words.every((word) => texts.get(row).includes(word));
      row.hidden = !fits;
      if (fits) count += 1;
    }
    shown.textContent = `${count} of ${rows.length} jobs shown`;
  };

  const sortBy = (heading, column) => {
    const descending = heading.getAttribute('aria-sort') === 'ascending';
    for (const other of table.tHead.rows[0].cells) other.removeAttribute('aria-sort');
    heading.setAttribute('aria-sort', descending ? 'descending' : 'ascending');
    const value = (row) => row.cells[column].textContent.trim();
    const sign = descending ? -1 : 1;
    const compare =
      heading.dataset.sort === 'number'
        ? (a, b) => Number(value(a)) - Number(value(b))
        : (a, b) => natural.compare(value(a), value(b));
    rows.sort((a, b) => sign * compare(a, b));
    body.append(...rows);
  };

  Array.from(table.tHead.rows[0].cells).forEach((heading, column) => {
    if (!heading.dataset.sort) return;
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = heading.textContent;
    button.addEventListener('click', () => sortBy(heading, column));
    heading.replaceChildren(button);
  });
  document.getElementById('filters').addEventListener('input', filter);
  document.getElementById('filters').addEventListener('submit', (event) => event.preventDefault());
  filter();
})();
