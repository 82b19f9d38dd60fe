import { describe, expect, it, test } from 'vitest';
import type { ListRow } from '../../src/model/list.js';
import { SettingsSchema } from '../../src/model/settings.js';
import { KINDS } from '../../src/model/words.js';
import { readLibraryText } from '../../src/read/company/library.js';
import type { ListOptions } from '../../src/read/list/list-options.js';
import { saidOf } from '../told.js';
import { codes, itemsOf, read } from './plain.js';

/** The words that the trade writes for a kind: taken, asked about, or refused with the nearest. */

const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;

function rowOf(kind: string, rest = '', heading = '', options: Partial<ListOptions> = {}): ListRow {
  const row = read(`tag,kind${heading}\nA,${quoted(kind)}${rest}\n`, options).jobs[0]?.rows[0];
  if (row === undefined) throw new Error('no row');
  return row;
}

describe('a word of the trade is taken for its kind', () => {
  test.each([
    ['service', 'utility, Grid, MAINS, meter-main, Meter Main, utility service, service entrance'],
    [
      'panel',
      'main panel, sub-panel, Subpanels, load center, breaker panel, distribution board, AC combiner panel',
    ],
    ['transfer-switch', 'ATS, manual transfer, interlock, transfer switches, Automatic Transfer Switch'],
    ['array', 'module, PV, solar panels, String, PV modules, PV array, photovoltaic array, pv/module'],
    ['combiner', 'combiner box, string combiner, re-combiner'],
    ['charge-controller', 'MPPT, solar controller, charge controllers, solar charge controller, MPPTs'],
    [
      'grid-tie-inverter',
      'string inverter, grid tie inverter, grid-tied inverters, Utility Interactive Inverter',
    ],
    ['ac-module-branch', 'microinverter, Micro-Inverters, AC modules'],
    ['inverter-charger', 'UPS, hybrid inverter, inverter/charger, off-grid inverter'],
    ['battery', 'battery bank, batteries, battery banks, Battery Rack'],
    ['wind-turbine', 'wind generator, wind turbines, windmill'],
    ['hydro-turbine', 'micro-hydro, water turbine'],
    ['generator', 'genset, Gensets, standby generator'],
    ['load', 'EV charger, pump, Motors, EVSE, well pump'],
    ['control-circuit', 'control wiring, two-wire start'],
    ['signal-line', 'data line, antenna, ethernet'],
    [
      'disconnect',
      'isolator, disconnect switch, safety switch, junction box, J-box, control box, circuit breaker',
    ],
    ['transformer', 'xfmr, trafo, step-down transformer'],
    ['dc-load', 'DC loads, radio'],
    ['dc-panel', 'DC load centre, DC load center, DC distribution'],
    ['diversion-load', 'dump load, Dump Loads'],
    ['ac-battery', 'AC-coupled battery, AC batteries'],
    ['pump-drive', 'variable-speed pump drive, VFD, pump drives'],
  ])('%s: %s', (kind, words) => {
    for (const word of words.split(',')) {
      const row = rowOf(word.trim());
      expect([word, row.facts.kind?.value]).toEqual([word, kind]);
      expect(row.facts.kind?.text).toBe(word.trim());
    }
  });
  test.each(KINDS)('%s itself, however it is written', (kind) => {
    for (const text of [kind, kind.toUpperCase(), kind.replaceAll('-', ' '), kind.replaceAll('-', '_')])
      expect(rowOf(text).facts.kind?.value).toBe(kind);
  });
  it('and the sign of a word that was damaged is no word', () => {
    expect(codes(read('tag,kind\nA,\u00fc pump\n'))).toEqual(['cell/wrong:2']);
  });
});

describe('a word that says more than a kind', () => {
  test.each(['rapid shutdown', 'Rapid-Shutdown Box', 'rapid shutdown devices'])('%s', (word) => {
    const { facts } = rowOf(word);
    expect([facts.kind?.value, facts.rapid_shutdown?.value]).toEqual(['disconnect', true]);
    expect(facts.rapid_shutdown?.origin).toEqual(facts.kind?.origin);
  });
  it('goes behind what the row states of a rapid-shutdown box', () => {
    const { facts } = rowOf('rapid shutdown box', ',no', ',rapid_shutdown');
    expect([facts.kind?.value, facts.rapid_shutdown?.value]).toEqual(['disconnect', false]);
  });
  it('states nothing where it says a kind alone', () => {
    expect(rowOf('isolator').facts.rapid_shutdown).toBeUndefined();
    expect(rowOf('transformer').facts.isolated).toBeUndefined();
  });
  it('states whether a transformer is one of two systems, and contradicts a cell that says otherwise', () => {
    expect(rowOf('autotransformer').facts.isolated?.value).toBe(false);
    expect(rowOf('isolation transformer').facts.isolated?.value).toBe(true);
    const result = read('tag,kind,isolated\nA,autotransformer,yes\nB,autotransformer,no\n');
    expect(codes(result)).toEqual(['row/kind-contradicts:2']);
    expect(itemsOf(result)[0]).toMatchObject({ severity: 'conflict', column: 'isolated' });
  });
  it('says it in the equipment library too', () => {
    const text = 'maker,model,kind\nInventa,RB-2,rapid shutdown box\n';
    const { library, items } = readLibraryText('library.csv', text);
    expect(items).toEqual([]);
    const facts = read('tag,maker,model\nA,Inventa,RB-2\n', { library }).jobs[0]?.rows[0]?.facts;
    expect([facts?.kind?.value, facts?.rapid_shutdown?.value]).toEqual(['disconnect', true]);
  });
});

describe('a word that can be several kinds is asked about', () => {
  test.each([
    ['inverter', 'grid-tie-inverter or inverter-charger or pump-drive'],
    ['Battery inverter', 'inverter-charger or ac-battery'],
    ['controllers', 'charge-controller or pump-drive or diversion-load or control-circuit'],
    ['generator panel', 'panel or transfer-switch'],
    ['turbine', 'wind-turbine or hydro-turbine'],
    ['main disconnect', 'service or disconnect'],
    ['Charger', 'charge-controller or inverter-charger or load'],
    ['ESS', 'battery or ac-battery'],
  ])('%s', (word, kinds) => {
    const result = read(`tag,kind\nA,${word}\n`);
    expect(itemsOf(result)).toMatchObject([
      { code: 'row/kind-unclear', severity: 'missing', column: 'kind' },
    ]);
    const said = saidOf(result.jobs[0]?.items[0]);
    expect([said.found, said.expected]).toEqual([word, kinds]);
    expect(said.hint).toContain('words in the column map or the settings');
    const row = result.jobs[0]?.rows[0];
    expect([row?.facts.kind, row?.unreadable.has('kind')]).toEqual([undefined, true]);
  });
  it('unless the library knows the model, and its kind is one of them', () => {
    const { library } = readLibraryText(
      'library.csv',
      'maker,model,kind\nInventa,IC-4,inverter-charger\nInventa,LB-1,battery\n',
    );
    const result = read('tag,kind,maker,model\nA,inverter,Inventa,IC-4\nB,inverter,Inventa,LB-1\n', {
      library,
    });
    expect(codes(result)).toEqual(['row/kind-unclear:3']);
    expect(result.jobs[0]?.rows.map((r) => r.facts.kind?.value)).toEqual(['inverter-charger', undefined]);
  });
  it('a meter passes on what it is fed with, and may be the service', () => {
    const row = rowOf('Meter');
    expect([row.facts.kind?.value, row.mayBe]).toEqual(['disconnect', ['disconnect', 'service']]);
    expect(rowOf('production meter').mayBe).toBeUndefined();
    expect(rowOf('disconnect').mayBe).toBeUndefined();
  });
});

describe('the company’s own words', () => {
  const columns = { words: { kind: { Umrichter: 'inverter-charger', meter: 'service' } } };
  const settings = SettingsSchema.parse({
    words: { kind: { umrichter: 'pump-drive', 'sun box': 'rsd box' } },
  });
  it('go before the built-in ones, those of a column map before those of the settings', () => {
    expect(rowOf('meter', '', '', { columns }).facts.kind?.value).toBe('service');
    expect(rowOf('meter', '', '', { columns }).mayBe).toBeUndefined();
    expect(rowOf('umrichter', '', '', { settings }).facts.kind?.value).toBe('pump-drive');
    expect(rowOf('Umrichter', '', '', { settings, columns }).facts.kind?.value).toBe('inverter-charger');
  });
  it('may stand for a word of the trade, with all that it says', () => {
    const { facts } = rowOf('Sun box', '', '', { settings });
    expect([facts.kind?.value, facts.rapid_shutdown?.value]).toEqual(['disconnect', true]);
  });
  it('count in the equipment library too', () => {
    const text = 'maker,model,kind\nInventa,U-1,Umrichter\n';
    expect(readLibraryText('library.csv', text, settings).items).toEqual([]);
    expect(readLibraryText('library.csv', text).items.map((i) => i.code)).toEqual(['cell/wrong']);
  });
  it('count for other fields', () => {
    const own = SettingsSchema.parse({ words: { outdoors: { draussen: 'yes' } } });
    expect(
      read('tag,kind,outdoors\nA,load,draussen\n', { settings: own }).jobs[0]?.rows[0]?.facts.outdoors?.value,
    ).toBe(true);
  });
});

describe('a word that nobody knows', () => {
  test.each([
    ['arrray', 'array'],
    ['roof top pv modules', 'array'],
    ['pool pump panel', 'panel'],
    ['barn lighting', 'load'],
    ['surge battery thing', 'battery'],
    ['DC safety disconnect', 'disconnect'],
    ['transfromer', 'transformer'],
  ])('%s: the nearest is %s', (word, kind) => {
    const result = read(`tag,kind\nA,${word}\n`);
    expect(codes(result)).toEqual(['cell/wrong:2']);
    const { hint } = saidOf(result.jobs[0]?.items[0]);
    expect(hint).toContain(`nearest kind is ${kind}:`);
    expect(hint).toContain('words in the column map or the settings');
    expect(hint).not.toContain('blank');
  });
  it('names all kinds where none is near', () => {
    const { hint } = saidOf(read('tag,kind\nA,zqx\n').jobs[0]?.items[0]);
    for (const kind of KINDS) expect(hint).toContain(kind);
    expect(hint).not.toContain('blank');
  });
});
