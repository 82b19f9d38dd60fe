import { conductorText } from '../../src/words/conductors.js';
import { saying, written } from '../in-english.js';
import { planJson } from '../../src/output/plan-file.js';
import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Catalogue, Part } from '../../src/model/catalogue.js';
import type { Plan } from '../../src/model/plan.js';
import { demoPlan } from '../documents/fixtures/demo-plans.js';
import { reason } from '../../src/model/reason.js';
import { jsonText } from '../../src/output/json.js';
import {
  missingModelsCsv,
  openItemsCsv,
  orderListCsv,
  reportCsv,
  scheduleCsv,
} from '../../src/output/tables.js';

let plan: Plan;
beforeAll(() => {
  plan = demoPlan('UF-103');
});

const rowsOf = (text: string): Record<string, string>[] => parse(text, { columns: true });
const heading = (text: string): string => text.split('\r\n')[0] ?? '';

const part = (name: string, price: number | null): Part => ({
  part: name,
  maker: 'Invented',
  description: '=HYPERLINK("x")',
  channels: 2,
  mcovAc: 150,
  mcovDc: null,
  up: 500,
  upBasis: 'VPR',
  nominalCurrent: 10_000,
  maximumCurrent: null,
  impulseCurrent: null,
  neutralNominalCurrent: null,
  neutralImpulseCurrent: null,
  sccr: null,
  sccrDc: null,
  type: 2,
  iecClass: null,
  connection: 'to-ground',
  enclosure: '4X',
  listedFor: [],
  listing: '',
  listingFile: '',
  indicator: 'light',
  indicatorMinVoltage: null,
  indicatorColor: '',
  leakage: null,
  leadLength: null,
  leadGauge: '',
  leadDiameter: null,
  leadArea: null,
  overcurrent: '',
  wireRange: '',
  wireRanges: [],
  overcurrentMost: null,
  overcurrentLeast: null,
  overcurrentDevice: null,
  leadByInstructions: null,
  torque: '',
  price,
  currency: price === null ? '' : 'USD',
  goodFlag: '',
  usedFlag: '',
  file: 'catalogue.csv',
  line: 2,
});

describe('the tables of a batch have the headings of the contract', () => {
  it('schedule.csv, one line a housing', () => {
    const text = scheduleCsv(plan);
    expect(heading(text)).toBe(
      'job,protector,part,place,protects,port,reasons,strength,required_mcov,mcov,up,lead_voltage,impulse_withstand,reach_m,channels,indicators,type,enclosure,overcurrent,smallest_lead',
    );
    const rows = rowsOf(text);
    expect(rows.map((r) => r['protector'])).toEqual(plan.protectors.map((p) => p.tag));
    for (const [i, protector] of plan.protectors.entries()) {
      const row = rows[i] ?? {};
      expect(row['port']?.split('; ')).toEqual(protector.ports.map((p) => p.port));
      expect(row['reasons']?.split('; ')).toEqual(protector.reasons.map((r) => r.rule));
      expect(Number(row['required_mcov'])).toBe(protector.required.mcov);
      expect(Number(row['mcov'])).toBe(protector.figures?.mcov);
      expect(row['channels']?.split('; ')).toEqual(protector.channels.map((c) => conductorText(c.wire)));
      for (const channel of protector.channels) {
        for (const { state, shows } of channel.indicator)
          expect(row['indicators']).toContain(`${conductorText(channel.wire)} ${state}: ${shows}`);
      }
    }
  });

  it('schedule.csv leaves the figures of a protector without a part empty', () => {
    const bare: Plan = {
      ...plan,
      protectors: plan.protectors
        .slice(0, 1)
        .map((p) => ({ ...p, part: null, figures: null, partDetails: null })),
    };
    expect(rowsOf(scheduleCsv(bare))[0]).toMatchObject({ part: '', mcov: '', up: '', reach_m: '', type: '' });
  });

  it('schedule.csv names the equipment where one protector stands at two', () => {
    const two: Plan = {
      ...plan,
      protectors: plan.protectors.slice(0, 1).map((p) => ({
        ...p,
        ports: [
          { equipment: 'A', port: 'battery' },
          { equipment: 'B', port: 'dc-in-1' },
        ],
      })),
    };
    expect(rowsOf(scheduleCsv(two))[0]?.['port']).toBe('A:battery; B:dc-in-1');
  });

  it('order-list.csv, one line a part, over all jobs', () => {
    const catalogue: Catalogue = {
      file: 'catalogue.csv',
      parts: [part('P-2', 10.5), part('P-1', null)],
      items: [],
    };
    const orders = [
      { job: 'B', part: 'P-2', quantity: 2, draft: false },
      { job: 'A', part: 'P-2', quantity: 1, draft: true },
      { job: 'A', part: 'P-1', quantity: 4, draft: true },
    ];
    const text = orderListCsv(orders, catalogue);
    expect(heading(text)).toBe('part,maker,description,quantity,complete,draft,jobs,price,currency');
    expect(rowsOf(text)).toEqual([
      {
        part: 'P-1',
        maker: 'Invented',
        description: '\'=HYPERLINK("x")',
        quantity: '4',
        complete: '0',
        draft: '4',
        jobs: 'A',
        price: '',
        currency: '',
      },
      {
        part: 'P-2',
        maker: 'Invented',
        description: '\'=HYPERLINK("x")',
        quantity: '3',
        complete: '2',
        draft: '1',
        jobs: 'B; A',
        price: '10.5',
        currency: 'USD',
      },
    ]);
    expect(rowsOf(orderListCsv(orders, undefined))[0]).toMatchObject({
      part: 'P-1',
      maker: '',
      quantity: '4',
    });
  });

  it('open-items.csv, those of no job with the job empty', () => {
    const item = {
      code: 'fact/x',
      severity: 'missing',
      values: saying('m', { found: '-5', expected: 'e', hint: 'h' }),
      equipment: 'E',
      file: '-',
      line: 0,
      column: '',
      who: 'office',
    } as const;
    const text = openItemsCsv([{ job: '', item }]);
    expect(heading(text)).toBe('job,severity,code,message,file,line,column,found,expected,hint,who');
    expect(rowsOf(text)).toEqual([
      {
        job: '',
        severity: 'missing',
        code: 'fact/x',
        message: 'm',
        file: '-',
        line: '0',
        column: '',
        found: '-5',
        expected: 'e',
        hint: 'h',
        who: 'office',
      },
    ]);
  });

  it('report.csv and missing-models.csv', () => {
    const text = reportCsv([
      {
        job: '=A',
        folder: 'A',
        basis: 'iec',
        status: 'draft',
        done: 'printed',
        protectors: 3,
        missing: 1,
        conflict: 0,
        confirm: 2,
        jobName: '+The yard',
        address: '2 Sparrow Drove, Quillmarsh',
        revision: 'B',
        record: 'planned',
      },
    ]);
    expect(text).toBe(
      'job,folder,basis,status,done,protectors,missing,conflict,confirm,job_name,address,revision,record\r\n' +
        '\'=A,A,iec,draft,printed,3,1,0,2,\'+The yard,"2 Sparrow Drove, Quillmarsh",B,planned\r\n',
    );
    expect(
      missingModelsCsv(
        [{ maker: 'M', model: '7', jobs: ['A', 'B'], facts: ['voc_stc', 'dc_inputs'] }],
        [
          { heading: 'Make', field: 'maker' },
          { heading: 'Model', field: 'model' },
          { heading: 'kind', field: 'kind' },
          { heading: 'DC inputs', field: 'dc_inputs' },
          { heading: 'Shelf', field: null },
        ],
      ),
    ).toBe('maker,model,jobs,kind,DC inputs,Shelf,voc_stc\r\nM,7,A; B,-,,-,\r\n');
  });
});

describe('plan.json', () => {
  it('is what the schema says, in its order, with figures rounded to 0.01', () => {
    const shuffled = Object.fromEntries(Object.entries(plan).reverse()) as Plan;
    expect(planJson(shuffled)).toBe(planJson(plan));
    expect(Object.keys(JSON.parse(planJson(shuffled)) as object)[0]).toBe('version');
    const rough: Plan = {
      ...plan,
      protectors: plan.protectors.map((p) => ({
        ...p,
        required: { ...p.required, mcov: 170.00499, in: 1e-9 },
      })),
    };
    expect((JSON.parse(planJson(rough)) as Plan).protectors[0]?.required).toMatchObject({ mcov: 170, in: 0 });
  });

  it('keeps the digits of a coefficient and of a leakage current', () => {
    const step = {
      symbol: 'b',
      code: 'cold-voltage/factor-of-table',
      values: {},
      unit: 'V/°C',
      uses: [],
      source: reason('source/as-stated'),
    } as const;
    const fine: Plan = {
      ...plan,
      protectors: plan.protectors.map((p) => ({
        ...p,
        calculations: [
          {
            rule: 'r',
            title: written('t'),
            steps: [{ ...step, value: -0.1151234, sure: 'stated' as const }],
          },
        ],
        partDetails: {
          maker: '',
          description: '',
          channels: 2,
          type: 2,
          iecClass: null,
          connection: 'to-ground',
          enclosure: '',
          listing: '',
          listingFile: '',
          listedFor: [],
          indicator: null,
          indicatorColor: '',
          indicatorMinVoltage: null,
          goodFlag: '',
          usedFlag: '',
          leakage: 0.00005,
        },
      })),
    };
    const [protector] = (JSON.parse(planJson(fine)) as Plan).protectors;
    expect(protector?.calculations[0]?.steps[0]?.value).toBe(-0.1151);
    expect(protector?.partDetails?.leakage).toBe(0.00005);
  });

  it('refuses a plan that breaks the schema, rather than write it', () => {
    expect(() => planJson({ ...plan, version: 3 } as unknown as Plan)).toThrow();
  });

  it('writes an unknown figure as null', () => {
    expect(jsonText({ a: Number.POSITIVE_INFINITY, b: 0.1 + 0.2, c: null })).toBe(
      '{\n  "a": null,\n  "b": 0.3,\n  "c": null\n}\n',
    );
  });
});
