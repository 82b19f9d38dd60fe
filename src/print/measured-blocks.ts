/**
 * What runs in a page by the browser's own protocol to measure its blocks (scripts of documents stay off): a promise of
 * the measured blocks, as `MeasuredBlock[]` of the model has them. It is text, since the types of a page's objects are
 * none of this program's.
 */
export const MEASURING_SCRIPT = `(async () => {
  await document.fonts.ready;
  const mm = (px) => Math.round((px * 25.4 * 1000) / 96) / 1000;
  const top = (element) => element.getBoundingClientRect().top;
  const bottom = (element) => element.getBoundingClientRect().bottom;
  // Rows that share a cell, and the rows of one body of several, stay together.
  const unitsOf = (parent) => {
    if (parent.localName !== 'table') return [...parent.children].map((child) => [child]);
    if (parent.tBodies.length > 1) return [...parent.tBodies].map((body) => [body]);
    const units = [];
    let open = 0;
    for (const row of parent.tBodies[0]?.rows ?? []) {
      if (open > 0) units.at(-1).push(row);
      else units.push([row]);
      open = Math.max(open - 1, ...[...row.cells].map((cell) => cell.rowSpan - 1));
    }
    return units;
  };
  // A table that goes on elsewhere keeps its columns, whatever stands in its rows there.
  const fixColumns = (table) => {
    const edges = new Set();
    let columns = 0;
    for (const row of table.rows) {
      let spanned = 0;
      for (const cell of row.cells) {
        const box = cell.getBoundingClientRect();
        edges.add(box.left).add(box.right);
        spanned += cell.colSpan;
      }
      columns = Math.max(columns, spanned);
    }
    const sorted = [...edges].sort((a, b) => a - b);
    const places = sorted.filter((edge, i) => i === 0 || edge - sorted[i - 1] > 1.5);
    if (places.length !== columns + 1) return;
    const widths = places.slice(1).map((edge, i) => edge - places[i]);
    table.style.width = table.getBoundingClientRect().width + 'px';
    const group = document.createElement('colgroup');
    for (const width of widths) {
      const column = document.createElement('col');
      column.style.width = width + 'px';
      group.append(column);
    }
    table.querySelectorAll(':scope > colgroup').forEach((old) => old.remove());
    table.insertBefore(group, table.caption ? table.caption.nextSibling : table.firstChild);
    table.style.tableLayout = 'fixed';
  };
  const MARK = 'rows';
  const groupOf = (child, begin, end) => {
    const isTable = child.localName === 'table';
    const isList = child.localName === 'ol' || child.localName === 'ul';
    const units = isTable || isList ? unitsOf(child) : [];
    if (units.length === 0) {
      const isHeading = /^h[1-6]$/.test(child.localName);
      return {
        kind: isHeading ? 'heading' : 'text',
        words: isHeading ? child.textContent.trim() : '',
        open: '', close: '', head: 0, tail: 0,
        rows: [{ html: child.outerHTML, height: mm(end - begin) }],
      };
    }
    if (child.localName === 'ol') units.forEach(([entry], i) => entry.setAttribute('value', (child.start || 1) + i));
    const tops = units.map(([first]) => top(first));
    const last = bottom(units.at(-1).at(-1));
    const rows = units.map((unit, i) => ({
      html: unit.map((row) => row.outerHTML).join(''),
      height: mm((tops[i + 1] ?? last) - tops[i]),
    }));
    if (isTable) fixColumns(child);
    const mark = document.createComment(MARK);
    units[0][0].before(mark);
    for (const unit of units) for (const row of unit) row.remove();
    const [open, close] = child.outerHTML.split('<!--' + MARK + '-->');
    return {
      kind: isTable ? 'table' : 'list',
      words: '', open, close, rows,
      head: mm(tops[0] - begin),
      tail: mm(end - last),
    };
  };
  return [...document.querySelectorAll('[data-block]')].map((block) => {
    const isWider = () => block.scrollWidth > block.clientWidth + 1;
    // One endless word would push its table off the sheet.
    if (isWider()) block.querySelectorAll('table').forEach((table) => { table.classList.add('anywhere'); });
    if (isWider()) block.querySelectorAll('*').forEach((element) => { element.style.overflowWrap = 'anywhere'; });
    const fits = !isWider();
    const children = [...block.children];
    const begins = children.map((child, i) => (i === 0 ? top(block) : top(child)));
    const end = bottom(block);
    // All places are taken before the first table is taken apart.
    const places = children.map((child, i) => [child, begins[i], begins[i + 1] ?? end]);
    const groups = [];
    for (const [child, from, to] of [...places].reverse()) groups.unshift(groupOf(child, from, to));
    return { name: block.dataset.block, fits, groups };
  });
})()`;
