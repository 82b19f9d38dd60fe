import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ColumnMapSchema, type ColumnMap } from '../../src/index.js';
import { freshFolder, shuntbook } from './command.js';

const LIST = 'fixtures/demo/grid.csv';

function listIn(folder: string, text: string): { readonly list: string; readonly map: string } {
  const list = join(folder, 'list.csv');
  writeFileSync(list, text);
  return { list, map: join(folder, 'map.json') };
}

const mapOf = (path: string): ColumnMap => ColumnMapSchema.parse(JSON.parse(readFileSync(path, 'utf8')));

/** Headings of which none is known, and words of kinds and systems that aren't known either. */
const FOREIGN = [
  'Kennung;Bauteil;Verbunden mit;Netz;Draußen;Länge (m)',
  'HA;Hausanschluss;;230;nein;',
  'UV;Unterverteilung;HA;400/230;nein;12,5',
  'WB;Wallbox;UV;230 Volt;ja;7,25',
].join('\n');

describe('columns', () => {
  it('shows each heading with its field and three cells', async () => {
    const told = await shuntbook(['columns', LIST]);
    expect(told.status).toBe(0);
    expect(told.out).toMatch(/^run_length +run_length .*30 ft \| 24 ft \| 45 ft/m);
  });

  it('writes a column map that reads the list as before, and overwrites nothing', async () => {
    const { list, map } = listIn(freshFolder(), 'Job,Tag,Type,Shelf\nJ,SVC,service,7\n');
    const told = await shuntbook(['columns', list, '--write', map]);
    expect(told.status).toBe(0);
    expect(mapOf(map).columns).toEqual({ Job: 'job', Tag: 'tag', Type: 'kind', Shelf: '?' });
    expect(told.err).toContain('nothing is known of 1 heading');
    const again = await shuntbook(['columns', list, '--write', map]);
    expect(again.status).toBe(64);
    expect(again.err).toContain('command/already-there');
    const read = await shuntbook(['read', list, '--columns', map]);
    expect(read.status).toBe(0);
    // Nobody has settled it yet, so it is still asked.
    expect(read.err).toContain('"Shelf"');
  });

  it('writes no map of a list that is not there', async () => {
    const map = join(freshFolder(), 'map.json');
    expect((await shuntbook(['columns', 'nowhere.csv', '--write', map])).status).toBe(2);
    expect(existsSync(map)).toBe(false);
  });

  it('ends with 1 where a heading has to be settled', async () => {
    const { list } = listIn(freshFolder(), 'Tag,Type,From,Length (ft)\nMP,panel,SVC,4\nSVC,service,,\n');
    const told = await shuntbook(['columns', list]);
    expect(told.status).toBe(1);
    expect(told.err).toContain('heading/near');
  });

  it('says once what every job of a list has', async () => {
    const { list } = listIn(freshFolder(), 'Job,Type\nA,panel\nB,panel\nC,panel\n');
    const told = await shuntbook(['columns', list]);
    expect(told.err.match(/heading\/tag-missing/g)).toHaveLength(1);
  });

  describe('of a list of which no heading is known', () => {
    it('writes a map to begin with: delimiter by counts, every heading a question', async () => {
      const { list, map } = listIn(freshFolder(), FOREIGN);
      const told = await shuntbook(['columns', list, '--write', map]);
      expect(told.status).toBe(2);
      expect(mapOf(map)).toMatchObject({
        dialect: { delimiter: ';', headingLine: 1 },
        columns: { Kennung: '? tag', Bauteil: '?', 'Verbunden mit': '? connects_to', 'Länge (m)': '?' },
      });
      expect(told.err).toContain('nothing is known of 6 headings');
    });

    it.each(['1', '3'])('takes the line that --heading-line states: %s', async (line) => {
      const { list, map } = listIn(
        freshFolder(),
        line === '1' ? FOREIGN : `Stand, Haus und Hof\n\n${FOREIGN}`,
      );
      await shuntbook(['columns', list, '--write', map, '--heading-line', line]);
      expect(mapOf(map)).toMatchObject({
        dialect: { delimiter: ';', headingLine: Number(line) },
        columns: { Kennung: '? tag' },
      });
    });

    it('is asked for its words once its headings are settled, which stay as they were corrected', async () => {
      const { list, map } = listIn(freshFolder(), FOREIGN);
      await shuntbook(['columns', list, '--write', map]);
      const settled = {
        Kennung: 'tag',
        Bauteil: 'kind',
        'Verbunden mit': 'connects_to',
        Netz: 'ac_in',
        Draußen: 'outdoors',
        'Länge (m)': 'run_length',
      };
      writeFileSync(map, JSON.stringify({ ...mapOf(map), columns: settled }));
      const told = await shuntbook(['columns', list, '--columns', map, '--write', map]);
      expect(told.status).toBe(0);
      expect(mapOf(map).columns).toEqual(settled);
      expect(mapOf(map).words).toEqual({
        kind: { Hausanschluss: '?', Unterverteilung: '?', Wallbox: '?' },
        ac_in: { '400/230': '? 400Y/230', '230 Volt': '? 230' },
        outdoors: { nein: '? yes or no', ja: '? yes or no' },
      });
      expect(told.err).toContain('nothing is known of 7 words');
    });

    it('is read by the map once it is settled, and read says what became of each heading and word', async () => {
      const { list, map } = listIn(freshFolder(), FOREIGN);
      writeFileSync(
        map,
        JSON.stringify({
          columns: {
            Kennung: 'tag',
            Bauteil: 'kind',
            'Verbunden mit': 'connects_to',
            Netz: 'ac_in',
            Draußen: '? outdoors',
            'Länge (m)': 'run_length',
            Farbe: null,
          },
          words: {
            kind: { Hausanschluss: 'service', Unterverteilung: 'panel', Wallbox: 'lode', Zähler: 'meter' },
            ac_in: { '400/230': '400Y/230', '230 Volt': '230' },
          },
        }),
      );
      const told = await shuntbook(['read', list, '--columns', map]);
      expect(told.status).toBe(1);
      for (const line of [
        /^Kennung +tag, by the map$/m,
        /^Länge \(m\) +run_length \(m\), by the map$/m,
        /^Draußen +not read: nothing says what it means$/m,
        /headings of the map that this list hasn’t: Farbe/,
        /words of the map that this list hasn’t: Zähler \(kind\)/,
        /^Hausanschluss +kind +1 +service$/m,
        /^Wallbox +kind +1 +lode, which isn’t known: not read$/m,
        /^400\/230 +ac_in +1 +400Y\/230$/m,
      ])
        expect(told.out).toMatch(line);
    });
  });
});
