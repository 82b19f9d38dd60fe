// Sorts and filters the table of jobs in the page itself: no server, no library. Without it the table is whole as it is.
'use strict';
(() => {
  const table = document.getElementById('jobs');
  const body = table.tBodies[0];
  const rows = Array.from(body.rows);
  const search = document.getElementById('search');
  const shown = document.getElementById('shown');
  const beyond = document.getElementById('beyond');
  const natural = new Intl.Collator('en', { numeric: true });
  // Rows that a screen shows at first: a thousand jobs stay quick, and print holds all that were chosen.
  const FIRST = 50;
  let most = FIRST;

  const folds = new Map(rows.map((row) => [row, Array.from(row.getElementsByTagName('details'))]));
  const texts = new Map(rows.map((row) => [row, row.textContent.toLowerCase()]));

  const facts = new Map(
    Array.from(document.querySelectorAll('.facts > li'), (fact) => [fact, fact.textContent.toLowerCase()]),
  );

  const asksRecords = document.querySelector('input[name="record"]') !== null;

  const chosen = (name) =>
    new Set(
      Array.from(document.querySelectorAll(`input[name="${name}"]:checked`), (input) => input.value),
    );

  /** Unfolds what was found, and folds again what a search had unfolded. */
  const unfold = (row, words) => {
    for (const fold of folds.get(row)) {
      const inside = fold.textContent.toLowerCase();
      const rest = texts.get(row).replace(inside, '');
      const found = words.some((word) => inside.includes(word) && !rest.includes(word));
      if (found && !fold.open) {
        fold.open = true;
        fold.dataset.found = '';
      } else if (!found && 'found' in fold.dataset) {
        fold.open = false;
        delete fold.dataset.found;
      }
    }
  };

  const filter = () => {
    const words = search.value.toLowerCase().split(/\s+/).filter(Boolean);
    const statuses = chosen('status');
    const deeds = chosen('done');
    const records = chosen('record');
    let count = 0;
    for (const row of rows) {
      const fits =
        statuses.has(row.dataset.status) &&
        deeds.has(row.dataset.done) &&
        (!asksRecords || records.has(row.dataset.record)) &&
        words.every((word) => texts.get(row).includes(word));
      row.hidden = !fits;
      if (fits) count += 1;
      row.classList.toggle('later', count > most);
      unfold(row, fits ? words : []);
    }
    for (const [fact, text] of facts) fact.hidden = !words.every((word) => text.includes(word));
    shown.textContent = `${count} of ${rows.length} jobs found`;
    beyond.hidden = count <= most;
    beyond.firstElementChild.textContent = `Show all ${count}`;
  };

  const value = (cell) => cell.dataset.value ?? cell.textContent.trim();

  const sortBy = (heading, column) => {
    const descending = heading.getAttribute('aria-sort') === 'ascending';
    for (const other of table.tHead.rows[0].cells) other.removeAttribute('aria-sort');
    heading.setAttribute('aria-sort', descending ? 'descending' : 'ascending');
    const sign = descending ? -1 : 1;
    const compare =
      heading.dataset.sort === 'number'
        ? (a, b) => Number(value(a.cells[column])) - Number(value(b.cells[column]))
        : (a, b) => natural.compare(value(a.cells[column]), value(b.cells[column]));
    rows.sort((a, b) => sign * compare(a, b));
    body.append(...rows);
    filter();
  };

  Array.from(table.tHead.rows[0].cells).forEach((heading, column) => {
    if (!heading.dataset.sort) return;
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = heading.textContent;
    button.addEventListener('click', () => sortBy(heading, column));
    // A browser prints no button in the head that it repeats on each page.
    const printed = document.createElement('span');
    printed.textContent = heading.textContent;
    heading.replaceChildren(button, printed);
  });
  beyond.addEventListener('click', () => {
    most = rows.length;
    filter();
  });
  document.getElementById('filters').addEventListener('input', filter);
  document.getElementById('filters').addEventListener('submit', (event) => event.preventDefault());

  // Paper can't be unfolded: where the style alone doesn't, as in older browsers, this does.
  let folded = [];
  window.addEventListener('beforeprint', () => {
    folded = Array.from(document.querySelectorAll('details:not([open])'));
    for (const fold of folded) fold.open = true;
  });
  window.addEventListener('afterprint', () => {
    for (const fold of folded) fold.open = false;
  });
  filter();
})();
