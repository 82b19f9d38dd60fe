import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { channelText } from '../../src/words/conductors.js';
import { crewNoteWords } from '../../src/words/crew-notes.js';
import { lookSentences } from '../../src/documents/closeout-pack/note-lights.js';
import { dataOfCsv, faults, items, one, planOfCsv } from './plan-of.js';

// Two sites of our own, as an electrician would check them: conductors and their names, lights, N, grounding, required voltages.

const read = (path: string): string => readFileSync(`fixtures/${path}`, 'utf8');

/** A protector by its port: each channel with its colour, and what its lights show. */
function siteOf(list: string, catalogue: string) {
  const csv = read(list);
  const options = { catalogue: read(catalogue), name: list };
  const data = dataOfCsv(csv, options);
  const at = (where: string) => {
    const found = data.protectors.filter((p) => p.ports.some((o) => `${o.equipment}:${o.port}` === where));
    return found;
  };
  return {
    data,
    plan: planOfCsv(csv, options),
    wires: (where: string): readonly string[] =>
      at(where).flatMap((p) => p.channels.map((c) => `${channelText(c)}: ${c.colour}`)),
    /** As the wiring note tells a crew to look at them. */
    lights: (where: string): readonly string[] =>
      at(where).flatMap((p) => lookSentences([p], crewNoteWords('en'))),
  };
}

describe('a plant of -48 V whose positive pole is grounded', () => {
  const { data, plan, wires, lights } = siteOf('lists/positive-ground-plant.csv', 'demo/catalogue.csv');

  it('has a protector at the service, the rectifier, the distribution, the radio and both ends of the alarm loop, and no fault', () => {
    expect(plan.protectors.map((p) => p.ports.map((o) => `${o.equipment}:${o.port}`).join())).toEqual([
      'ALM:terminals',
      'DCP:dc-in',
      'DCP:terminals',
      'RAD:dc-in',
      'RECT:ac-in',
      'SVC:service',
    ]);
    expect(faults(plan)).toEqual([]);
  });

  it.each(['DCP:dc-in', 'RAD:dc-in', 'ALM:terminals', 'DCP:terminals'])(
    '%s: both poles have a channel, named by voltage and use, with no colour taken for granted',
    (where) => {
      expect(wires(where)).toEqual(['positive, return (+): ', 'negative, -48\u00a0V: ']);
      expect(one(plan, where).channels.map((c) => [c.conductor, c.to])).toEqual([
        ['positive', 'ground'],
        ['negative', 'ground'],
      ]);
    },
  );

  it('the light of the grounded positive is dark, that of the negative lit', () => {
    for (const where of ['DCP:dc-in', 'RAD:dc-in'])
      expect(lights(where)).toEqual(['Battery’s disconnect closed: 1 OFF; 2 ON.']);
    for (const where of ['ALM:terminals', 'DCP:terminals'])
      expect(lights(where)).toEqual(['Source on: 1 OFF; 2 ON.', 'Source off: all OFF.']);
  });

  it('is grounded at its positive, and the AC side solidly', () => {
    for (const where of ['DCP:dc-in', 'RAD:dc-in'])
      expect(one(plan, where).grounding).toBe('positive grounded');
    for (const where of ['RECT:ac-in', 'SVC:service']) expect(one(plan, where).grounding).toBe('solid');
    expect(wires('RECT:ac-in')).toEqual(['L1: black', 'L2: red']);
  });

  it('asks for the charge voltage of 24 lead-acid cells at -20 °C (values from memory), on AC for 1.15 x 120 V', () => {
    // 24 x (2.467 + 0.005 x 45) V.
    for (const where of ['DCP:dc-in', 'RAD:dc-in', 'ALM:terminals'])
      expect(one(plan, where).required.mcov).toBe(64.61);
    expect(one(plan, 'DCP:dc-in').required.sccr).toBe(5000);
    for (const where of ['RECT:ac-in', 'SVC:service']) expect(one(plan, where).required.mcov).toBe(138);
  });

  it('is above 60 V while it is charged, so that each box is marked DANGER', () => {
    expect(new Set(data.protectors.map((p) => p.wiring.hazard))).toEqual(new Set(['shock']));
  });
});

describe('a service of 480Y/277 that a resistor grounds', () => {
  const site = siteOf('lists/resistance-grounded-works.csv', 'lists/resistance-grounded-works.catalogue.csv');
  const { data, plan, wires, lights } = site;
  const PLACES = ['CRN:feeder', 'MCC:feeder', 'SVC:service'];

  it('has protectors at the service and at both ends of the run to the crane, listed for such systems, and no fault', () => {
    expect(data.protectors.map((p) => p.ports.map((o) => `${o.equipment}:${o.port}`).join())).toEqual(PLACES);
    for (const where of PLACES) {
      expect(one(plan, where).part).toBe('WK-THRIFT');
      expect(one(plan, where).required.listedFor).toBe('impedance');
    }
    expect(faults(plan)).toEqual([]);
  });

  it('without a part that is listed for such systems nothing fits, and each place says so', () => {
    const { plan: bare } = siteOf('lists/resistance-grounded-works.csv', 'demo/catalogue.csv');
    expect(items(bare, 'choose/none-fits').map((i) => i.equipment)).toEqual(['CRN', 'MCC', 'SVC']);
    for (const where of PLACES) expect(one(bare, where).part).toBeNull();
  });

  it('lines are brown, orange and yellow; N, which nothing bonds to ground, has the spare channel, and is gray', () => {
    for (const where of ['MCC:feeder', 'SVC:service'])
      expect(wires(where)).toEqual(['L1: brown', 'L2: orange', 'L3: yellow', 'N: gray']);
    // A load of three lines has no N: its spare channel doubles L1.
    expect(wires('CRN:feeder')).toEqual(['L1: brown', 'L2: orange', 'L3: yellow', 'L1 (doubled): brown']);
    for (const where of PLACES) expect(one(plan, where).wiring.unprotected).toEqual([]);
  });

  it('the light of each line is recorded; N’s is dark, since its impedance holds it near ground: a ground fault lights it', () => {
    expect(lights('CRN:feeder')).toEqual(['Source on: all ON or OFF.', 'Source off: all OFF.']);
    for (const where of ['MCC:feeder', 'SVC:service']) {
      expect(lights(where)).toEqual(['Source on: 1, 2, 3 ON or OFF; 4 OFF.', 'Source off: all OFF.']);
      expect(one(plan, where).channels[3]?.indicator[0]?.because).toBe(
        'an impedance holds N near ground in a sound system; if it lights, a ground fault may be on a line: call',
      );
    }
  });

  it('asks for 1.15 x line to line, and is grounded through an impedance down to the load', () => {
    for (const where of PLACES) {
      expect(one(plan, where).required.mcov).toBe(552);
      expect(one(plan, where).grounding).toBe('impedance');
      expect(one(plan, where).required.sccr).toBe(28_000);
    }
  });

  it('behind its transformer the system is another one, grounded solidly, with N bonded there', () => {
    const csv = read('lists/resistance-grounded-works.csv')
      .replace(/^(job,.*)$/m, '$1,protect')
      .replace(/^(.*,(?:XF,transformer|LP,panel),.*)$/gm, '$1,yes');
    const asked = planOfCsv(csv, { catalogue: read('lists/resistance-grounded-works.catalogue.csv') });
    for (const where of ['XF:ac-out', 'LP:feeder']) {
      expect(one(asked, where).grounding).toBe('solid');
      expect(one(asked, where).required.mcov).toBe(138);
      expect(one(asked, where).part).toBe('PM-INGLENOOK-3');
    }
    expect(one(asked, 'XF:ac-out').wiring.unprotected[0]?.because).toBe('N is bonded to ground here');
    expect(one(asked, 'LP:feeder').wiring.unprotected[0]?.because).toBe(
      'no channel is left for it, and none is asked for',
    );
  });
});
