import { saidOf } from '../told.js';
import { describe, expect, it, test } from 'vitest';
import { readCatalogue, readCatalogueText, type CatalogueReading } from '../../src/read/company/catalogue.js';

const read = (headings: string, ...rows: string[]): CatalogueReading =>
  readCatalogueText('catalogue.csv', [headings, ...rows, ''].join('\n'));
const items = (reading: CatalogueReading): unknown[] =>
  reading.catalogue.items.map((i) => [i.code, i.severity, i.line, i.column]);

describe('a part', () => {
  it('is read in V, A, m and mm2', () => {
    const { catalogue, unreadable } = read(
      'part,maker,channels,mcov_ac,mcov_dc,up,up_basis,in_ka,imax_ka,iimp_ka,sccr_ka,sccr_dc_ka,type,iec_class,connection,enclosure,listed_for,indicator,leakage_ma,lead_length,lead_gauge,price',
      'P-1,Inventa,2,150,,600,VPR,10,40,,25,,2,,,NEMA 4x,ungrounded; corner,light,0.5,400 mm,6 mm2,98.50',
    );
    expect(unreadable).toEqual([]);
    expect(catalogue.items).toEqual([]);
    expect(catalogue.parts).toMatchObject([
      {
        part: 'P-1',
        maker: 'Inventa',
        channels: 2,
        mcovAc: 150,
        mcovDc: null,
        up: 600,
        upBasis: 'VPR',
        nominalCurrent: 10_000,
        maximumCurrent: 40_000,
        impulseCurrent: null,
        sccr: 25_000,
        sccrDc: null,
        type: 2,
        iecClass: null,
        connection: 'to-ground',
        enclosure: '4X',
        listedFor: ['ungrounded', 'corner'],
        indicator: 'light',
        leadLength: 0.4,
        leadGauge: '6 mm2',
        leadArea: 6,
        price: 98.5,
        currency: '',
        file: 'catalogue.csv',
        line: 2,
      },
    ]);
    expect(catalogue.parts[0]?.leakage).toBeCloseTo(0.0005, 12);
    // ASTM B258 is asked for AWG; a metric size is the circle of its area.
    expect(catalogue.parts[0]?.leadDiameter).toBeCloseTo(2 * Math.sqrt(6 / Math.PI) * 1e-3, 12);
  });

  it('says which overcurrent device stands ahead of it, and which leads it takes', () => {
    const headings =
      'part,channels,mcov_ac,overcurrent,overcurrent_a,overcurrent_min_a,overcurrent_device,lead_by_instructions,wire_range';
    const { catalogue } = read(
      headings,
      'P-1,2,150,in words,20,15 A,Breaker,yes,14 to 6 AWG Cu',
      'P-2,2,150,,0.02 kA,,none,no,12 to 4 AWG Al',
      'P-3,2,150,,,,,,',
    );
    expect(catalogue.items).toEqual([]);
    const found = catalogue.parts.map((p) => [
      p.overcurrent,
      p.overcurrentMost,
      p.overcurrentLeast,
      p.overcurrentDevice,
      p.leadByInstructions,
      p.wireRange,
      p.wireRanges.map((r) => `${r.metal} ${r.least.name} ${r.most.name}`).join(),
    ]);
    expect(found).toEqual([
      ['in words', 20, 15, 'breaker', true, '14 to 6 AWG Cu', 'copper 14 AWG 6 AWG'],
      ['', 20, null, 'none', false, '12 to 4 AWG Al', 'aluminium 12 AWG 4 AWG'],
      ['', null, null, null, null, '', ''],
    ]);
  });

  test.each([
    ['overcurrent_a', 'twenty'],
    ['overcurrent_a', '0'],
    ['overcurrent_a', '20 V'],
    ['overcurrent_min_a', '-5'],
    ['overcurrent_device', 'switch'],
    ['lead_by_instructions', 'maybe'],
  ])('whose %s is “%s” is left out: a blank would mean something else', (column, cell) => {
    const reading = read(`part,channels,mcov_ac,${column}`, `P,1,75,${cell}`);
    expect(reading.catalogue.parts).toEqual([]);
    expect(items(reading)).toEqual([['catalogue/part-left-out', 'confirm', 2, column]]);
  });

  it('whose least device is larger than its largest is left out, where it is as large it isn’t', () => {
    const of = (least: string): CatalogueReading =>
      read('part,channels,mcov_ac,overcurrent_a,overcurrent_min_a', `P,1,75,20,${least}`);
    expect(items(of('20.1'))).toEqual([['catalogue/part-left-out', 'confirm', 2, 'overcurrent_min_a']]);
    expect(items(of('20'))).toEqual([]);
  });

  it('whose wire range can’t be read keeps its words, with an item', () => {
    const reading = read('part,channels,mcov_ac,wire_range', 'P,1,75,see its instructions');
    expect(reading.catalogue.parts).toMatchObject([{ wireRange: 'see its instructions', wireRanges: [] }]);
    expect(items(reading)).toEqual([['catalogue/wire-range-not-read', 'confirm', 2, 'wire_range']]);
  });

  test.each([
    ['10 AWG', 2.588],
    ['6 AWG', 4.115],
    ['2/0', 9.266],
  ])('of a lead of %s has a lead %d mm thick (ASTM B258)', (gauge, mm) => {
    const { catalogue } = read('part,channels,mcov_dc,lead_gauge', `P,1,75,${gauge}`);
    expect((catalogue.parts[0]?.leadDiameter ?? 0) * 1000).toBeCloseTo(mm, 3);
  });

  test.each([
    ['in_ka', '10', 10_000],
    ['in_ka', '10 kA', 10_000],
    ['in_ka', '10000 A', 10_000],
    ['in_ka (A)', '10000', 10_000],
    ['In (kA)', '10', 10_000],
  ])('takes %s %s as amperes', (heading, cell, amperes) => {
    expect(
      read(`part,channels,mcov_dc,${heading}`, `P,1,75,${cell}`).catalogue.parts[0]?.nominalCurrent,
    ).toBe(amperes);
  });

  it('with a word of its own in a column of words takes case and blanks lightly', () => {
    const { catalogue } = read(
      'part,channels,mcov_ac,type,iec_class,connection,up_basis,indicator',
      'P,4,255,Type 1,t1,3+1,vpr,None',
      'Q,4,255,2,T2,To Ground,UP,flag',
    );
    expect(catalogue.parts).toMatchObject([
      { type: 1, iecClass: 'T1', connection: '3+1', upBasis: 'VPR', indicator: 'none' },
      { type: 2, iecClass: 'T2', connection: 'to-ground', upBasis: 'Up', indicator: 'flag' },
    ]);
  });
});

describe('the flag of a part', () => {
  it('is read in the words of the catalogue: how it looks while good, and once used up', () => {
    const { catalogue } = read(
      'part,channels,mcov_ac,indicator,good_flag,used_flag',
      'P,2,150,flag,green stripe,red',
      'Q,2,150,light,,',
    );
    expect(catalogue.parts).toMatchObject([
      { indicator: 'flag', goodFlag: 'green stripe', usedFlag: 'red' },
      { indicator: 'light', goodFlag: '', usedFlag: '' },
    ]);
  });
});

describe('a row that cannot be used is left out, in one item, and the others stay', () => {
  test.each([
    [',2,150,', 'part'],
    ['P,,150,', 'channels'],
    ['P,0,150,', 'channels'],
    ['P,2.5,150,', 'channels'],
    ['P,2,,', 'mcov_ac'],
    ['P,2,n/a,', 'mcov_ac'],
    ['P,2,lots,', 'mcov_ac'],
    ['P,2,"1,234",', 'mcov_ac'],
    ['P,2,#REF!,', 'mcov_ac'],
    ['P,2,-5,', 'mcov_ac'],
    ['P,2,150 A,', 'mcov_ac'],
    ['P,2,150,10', 'lead_gauge'],
    ['P,x,lots,thick', 'channels'],
  ])('%s: %s', (row, column) => {
    const reading = read('part,channels,mcov_ac,lead_gauge', row, 'OK,2,150,');
    expect(items(reading)).toEqual([['catalogue/part-left-out', 'confirm', 2, column]]);
    expect(reading.catalogue.parts.map((p) => p.part)).toEqual(['OK']);
  });

  it('but a price that cannot be read costs no part', () => {
    const reading = read('part,channels,mcov_ac,price', 'P,2,150,ask');
    expect(items(reading)).toEqual([['catalogue/cell-ignored', 'confirm', 2, 'price']]);
    expect(reading.catalogue.parts).toMatchObject([{ part: 'P', price: null }]);
  });

  it('the second of two rows of one part', () => {
    const reading = read('part,channels,mcov_ac', 'P,2,150', 'P,2,320');
    expect(items(reading)).toEqual([['catalogue/part-twice', 'confirm', 3, 'part']]);
    expect(reading.catalogue.parts).toMatchObject([{ mcovAc: 150 }]);
  });

  it('a row whose cells are shifted', () => {
    expect(items(read('part,channels,mcov_ac', 'P,2,150,7'))).toEqual([
      ['row/cells-surplus', 'confirm', 2, ''],
    ]);
  });
});

it('says of a VPR that UL 1449 has none of that figure', () => {
  const reading = read(
    'part,channels,mcov_ac,up,up_basis',
    'P,2,150,600,VPR',
    'Q,2,150,650,VPR',
    'R,2,150,650,Up',
  );
  expect(items(reading)).toEqual([['catalogue/vpr-off-list', 'confirm', 3, 'up']]);
  expect(reading.catalogue.parts).toHaveLength(3);
});

describe('a catalogue that cannot be read', () => {
  test.each([
    ['', 'file/empty'],
    ['a,b\n1,2\n', 'heading/none'],
  ])('%j: %s', (text, code) => {
    const reading = readCatalogueText('catalogue.csv', text);
    expect(reading.unreadable.map((i) => i.code)).toEqual([code]);
    expect(reading.catalogue.parts).toEqual([]);
  });
  it('is not read on once a signal ends the reading', async () => {
    const ended = readCatalogue('fixtures/demo/catalogue.csv', AbortSignal.abort(new Error('ended')));
    await expect(ended).rejects.toThrow('ended');
  });
  it('is not there', async () => {
    expect(
      (await readCatalogue('fixtures/lists/no-such-catalogue.csv')).unreadable.map((i) => i.code),
    ).toEqual(['file/not-there']);
  });
});

describe('a figure that would be read wrongly', () => {
  const leftOut = (headings: string, row: string): unknown[] => {
    const reading = read(headings, row);
    expect(reading.catalogue.parts).toEqual([]);
    return items(reading);
  };
  test.each([
    ['AC is not DC', 'part,channels,mcov_ac', 'P,2,150 V dc', 'mcov_ac'],
    ['AC is not DC', 'part,channels,mcov_ac (V dc)', 'P,2,150', 'mcov_ac (V dc)'],
    ['AC is not DC', 'part,channels,mcov_dc', 'P,2,150 Vac', 'mcov_dc'],
    ['AC is not DC', 'part,channels,mcov_dc,sccr_ka', 'P,2,150,20 kA dc', 'sccr_ka'],
    ['AC is not DC', 'part,channels,mcov_dc,sccr_dc_ka', 'P,2,150,20 kA ac', 'sccr_dc_ka'],
    ['no protector has so large a figure', 'part,channels,mcov_ac,In', 'P,2,150,20000', 'In'],
    ['no protector has so large a figure', 'part,channels,mcov_ac,SCCR', 'P,2,150,200000', 'SCCR'],
    ['no protector has so large a figure', 'part,channels,mcov_ac', 'P,2,99999999999999999999', 'mcov_ac'],
  ])('%s: %s / %s', (_why, headings, row, column) => {
    expect(leftOut(headings, row)).toEqual([['catalogue/part-left-out', 'confirm', 2, column]]);
  });
  test.each([
    ['part,channels,mcov_ac,up,up_basis', 'P,2,320,1.5,Up'],
    ['part,channels,mcov_dc,up', 'P,2,600,600'],
    ['part,channels,mcov_ac,mcov_dc,up', 'P,2,150,1000,600'],
  ])('a level is above what the part bears all the time: %s / %s', (headings, row) => {
    expect(leftOut(headings, row)).toEqual([['catalogue/part-left-out', 'confirm', 2, 'up']]);
  });
  it('in kV is one in V', () => {
    const { catalogue } = read('part,channels,mcov_ac,up (kV),up_basis', 'P,2,320,1.5,Up');
    expect(catalogue.items).toEqual([]);
    expect(catalogue.parts).toMatchObject([{ mcovAc: 320, up: 1500 }]);
  });
  it('an MCOV of neither AC nor DC is a hint, and the part is left out', () => {
    const reading = read('part,channels,MCOV', 'P,2,150');
    expect(items(reading)).toEqual([
      ['heading/unknown', 'confirm', 1, 'MCOV'],
      ['catalogue/part-left-out', 'confirm', 2, ''],
    ]);
    expect(saidOf(reading.catalogue.items[0]).hint).toContain('mcov_ac');
  });
});
