// The title strip of a sheet: the part of the structure that holds both of what every strip says, whatever the job.

const MARKS = [/^Seal and signature/, /^NTS$/];
const MM = 72 / 25.4;
/** Points between a strip's text and the rule around it. */
const ROOM = 4 * MM;
/** Share of a sheet; what takes more is no strip, but a sheet whose marks have come apart. */
const MOST = 0.6;

/** The texts of a page that stand in its title strip; none on a page that has no strip. */
function stripOf({ texts }) {
  const marks = MARKS.map((mark) => texts.find(({ text }) => mark.test(text.trim())));
  if (marks.some((mark) => mark === undefined)) return [];
  const [one, other] = marks.map(({ path }) => path);
  const differs = one.findIndex((at, depth) => at !== other[depth]);
  const root = differs < 0 ? one : one.slice(0, differs);
  return texts.filter(({ path }) => root.every((at, depth) => at === path[depth]));
}

/**
 * The title strip of a page.
 * @param {import('./page.d.mts').Page} page
 * @returns {import('./title-strip.d.mts').Strip | null} its texts, and the box that it takes from the sheet, in points
 */
export function titleStrip(page) {
  const texts = new Set(stripOf(page));
  if (texts.size === 0) return null;
  const most = (of, side) => of(...[...texts].map((text) => text[side]));
  const [left, top] = [most(Math.min, 'left') - ROOM, most(Math.min, 'top') - ROOM];
  const isAlongFoot = most(Math.max, 'right') - left > most(Math.max, 'bottom') - top;
  const box = {
    left: isAlongFoot ? 0 : left,
    top: isAlongFoot ? top : 0,
    right: page.width,
    bottom: page.height,
  };
  const share = ((box.right - box.left) * (box.bottom - box.top)) / (page.width * page.height);
  return share > MOST ? null : { texts, box, isAlongFoot };
}
