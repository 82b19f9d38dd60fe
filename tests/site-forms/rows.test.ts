import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { siteTables } from '../../src/output/site-tables.js';
import { fieldsOf } from '../../src/site-forms/field-names.js';
import { siteForms, type SiteForms } from '../../src/site-forms/rows.js';
import { planOf } from '../demo/plan-of.js';
import { dataOfCsv } from '../plan/plan-of.js';
import { csvOfSite, sites } from '../plan/sites.js';

const formsOf = async (csv: string): Promise<SiteForms> => siteForms(await planOf(csv));

const SITE = `
job,tag,kind,connects_to,run_length (ft),place,ac_in,ac_out,battery_voltage,battery_chemistry,dc_inputs,max_dc_voltage (V),lowest_temp (C),voc_stc (V),isc_stc (A),voc_coefficient,modules_in_series,strings_in_parallel
J,SVC,service,,,House / wall,120/240,,,,,,-18,,,,,
J,INV,grid-tie-inverter,SVC,10,House / garage,,240,,,1,600,,,,,,
J,ARR,array,INV/1,40,House / roof,,,,,,,,41.2,10.2,-0.28 %/C,10,1
`;

describe('the headings of the tables', () => {
  it('are those of record.md, in its order', async () => {
    const first = siteTables(await formsOf(SITE)).map(({ name, content }) => [
      name,
      String(content).split('\r\n')[0],
    ]);
    expect(first).toEqual([
      [
        'site-record.csv',
        'job,plan,protector,part_planned,part_fitted,serial,date_code,outcome,serial_removed,place,lead_length,lead_gauge,device_fitted,device_volts,device_interrupting_ka,device_position,torque,instrument,ground_point,fault_current,photo,change,reason,date,time,name,licence',
      ],
      [
        'site-readings.csv',
        'job,plan,protector,channel,conductor,kind,from,to,state,low,high,expected,found,why_not,date,name',
      ],
      ['site-facts.csv', 'job,plan,assumption,tag,fact,assumed,found,by,date,photo'],
    ]);
  });
});

describe('the rows of a job', () => {
  it('has a row a housing, with what the plan knows and nothing else', async () => {
    const plan = await planOf(SITE);
    const { record } = siteForms(plan);
    expect(record.map(({ protector, part_planned: part, place }) => [protector, part, place])).toEqual(
      plan.protectors.map(({ tag, part, place }) => [tag, part, place]),
    );
    for (const { job, plan: mark, protector, part_planned: part, place, ...rest } of record) {
      expect(job).toBe('J');
      expect(mark).toMatch(/^[B-Z]{8}$/);
      expect([protector, part, place]).not.toContain('');
      expect(Object.values(rest).every((cell) => cell === '')).toBe(true);
    }
  });

  it('asks for the volts of the note, in their state, with limits and sign', async () => {
    const plan = await planOf(SITE);
    const { readings } = siteForms(plan);
    const array = plan.protectors.find(({ ports }) => ports.some(({ port }) => port === 'dc-in-1'));
    const [pair] = array?.wiring.measuring.bands ?? [];
    const volts = readings.filter((one) => one.protector === array?.tag && one.kind === 'volts');
    expect(volts.map(({ channel, from, to, state }) => [channel, from, to, state])).toEqual([
      [1, 'positive', 'negative', 'sun'],
      [1, 'positive', 'ground', 'sun'],
      [2, 'negative', 'ground', 'sun'],
    ]);
    expect(volts[0]).toMatchObject({ low: pair?.low, high: pair?.high, expected: 'positive', found: '' });
    expect(volts[2]).toMatchObject({ expected: 'negative' });
    const service = readings.filter((one) => one.kind === 'volts' && one.state === 'utility on');
    expect(service.map(({ from, to }) => `${String(from)} ${String(to)}`)).toContain('L1 ground');
  });

  it('asks for each light in each of its states, and says how it should look', async () => {
    const plan = await planOf(SITE);
    const { readings } = siteForms(plan);
    const lights = readings.filter(({ kind }) => kind !== 'volts');
    const planned = plan.protectors.flatMap(({ tag, channels }) =>
      channels.flatMap(({ channel, indicator }) =>
        indicator.map(({ state, shows }) => [tag, channel, state, shows]),
      ),
    );
    expect(lights.map((one) => [one.protector, one.channel, one.state, one.expected])).toEqual(planned);
    expect(new Set(lights.map(({ from, to, low, high }) => `${from}${to}${low}${high}`))).toEqual(
      new Set(['']),
    );
  });

  it('asks for every assumption that papers ask to verify, by each tag that it names', async () => {
    const { facts } = await formsOf(SITE);
    expect(facts).toContainEqual({
      job: 'J',
      plan: facts[0]?.plan,
      assumption: expect.stringMatching(/^A\d+$/) as string,
      tag: 'ARR',
      fact: 'dc_grounding',
      assumed: 'floating',
      found: '',
      by: '',
      date: '',
      photo: '',
    });
    const order = facts.map(({ assumption }) => Number(assumption.slice(1)));
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('asks for no volts where nothing may be opened', () => {
    // A turbine whose voltage nobody knows: its box stays closed.
    const list = [
      'job,tag,kind,connects_to,place,output,battery_voltage,battery_chemistry',
      'J,WT,wind-turbine,CC,Mast,three-phase,,',
      'J,CC,charge-controller,BAT,Hut,,,',
      'J,BAT,battery,,Hut,,48,lead-acid',
    ];
    const plan = dataOfCsv(list.join('\n'), { unchecked: true });
    const closed = plan.protectors.filter(
      ({ wiring }) => wiring.measuring.state?.code === 'measure-state/do-not-open',
    );
    expect(closed.map(({ tag }) => tag)).toEqual(['P-1', 'P-2']);
    const { readings } = siteForms(plan);
    // There are bands, which only say that nothing is known.
    expect(closed.flatMap(({ wiring }) => wiring.measuring.bands).length).toBeGreaterThan(0);
    expect(readings.filter(({ kind }) => kind === 'volts')).toEqual([]);
  });

  it('gives every cell to fill in a name of its own, on every site, and asks for no reading twice', () => {
    fc.assert(
      fc.property(sites(), (site) => {
        const plan = dataOfCsv(csvOfSite(site), { unchecked: true });
        const forms = siteForms(plan);
        const fields = fieldsOf(forms);
        for (const name of fields.keys()) expect(name).toMatch(/^[A-Za-z0-9_~-]+(?:\.[A-Za-z0-9_~-]+)+$/);
        // No band of the plan goes missing because two of them would be one row.
        for (const { tag, wiring, ports } of plan.protectors) {
          const { bands, state } = wiring.measuring;
          if (state?.code === 'measure-state/do-not-open') continue;
          const beside = plan.protectors.filter((p) => JSON.stringify(p.ports) === JSON.stringify(ports));
          if (beside.length > 1) continue;
          const rows = forms.readings.filter((one) => one.protector === tag && one.kind === 'volts');
          expect(rows).toHaveLength(bands.flatMap(({ between }) => between).length);
        }
      }),
      { numRuns: 100, seed: 20_260_301 },
    );
  });
});
