import { describe, expect, it } from 'vitest';
import type { DueCheck, RegisterLine } from '../../src/model/register.js';
import {
  checkFits,
  checkWithoutNames,
  lineFit,
  lineWithoutNames,
  type RegisterQuestion,
} from '../../src/register/search.js';
import { serialList, serialRange, type SerialTest } from '../../src/register/serials.js';

const LINE: RegisterLine = {
  serial: '0150',
  dateCode: '',
  part: 'MD-DC-75',
  maker: 'Mossdale',
  job: 'UF-901',
  jobName: 'Reed Hollow',
  address: '4 Sedge Lane',
  place: 'Shed / wall',
  protector: 'P-1',
  equipments: ['CC-1'],
  ports: ['dc-in-1'],
  conductors: ['positive', 'negative'],
  dateFitted: '2025-03-14',
  by: 'crew 2',
  leadLength: 0.4,
  level: 410,
  firstLook: [],
  nextCheck: '2026-03-14',
  replacedBy: [],
  replacedOn: '',
  reason: 'the owner, Mrs Reed, asked for it',
  photos: ['reed-hollow.jpg'],
};
const CHECK: DueCheck = {
  due: '2026-03-14',
  job: 'UF-901',
  jobName: 'Reed Hollow',
  address: '4 Sedge Lane',
  place: 'Shed / wall',
  protector: 'P-1',
  part: 'MD-DC-75',
  serials: ['0150'],
  what: 'look',
  kind: '',
  state: '',
  conductors: [],
  expected: [],
};
const range = serialRange('0100..0199') as SerialTest;

describe('a question to the register', () => {
  it.each<[string, Partial<RegisterLine>, RegisterQuestion, string]>([
    ['nothing asked', {}, {}, 'meant'],
    ['its part', {}, { part: 'md-dc-75 ' }, 'meant'],
    ['another part', {}, { part: 'MD-DC-7' }, 'other'],
    ['part and range', {}, { part: 'MD-DC-75', serials: range }, 'meant'],
    ['a serial outside', { serial: '0200' }, { part: 'MD-DC-75', serials: range }, 'other'],
    ['a serial of another form', { serial: 'X150' }, { part: 'MD-DC-75', serials: range }, 'untold'],
    ['no serial', { serial: '' }, { part: 'MD-DC-75', serials: range }, 'untold'],
    ['a part without serials', { serial: 'none' }, { part: 'MD-DC-75', serials: range }, 'untold'],
    ['no serial, of another part', { serial: '' }, { part: 'other', serials: range }, 'other'],
    ['no serial, asked without a part', { serial: '' }, { serials: range }, 'other'],
    ['a list', {}, { serials: serialList(['0150']) }, 'meant'],
  ])('%s', (_name, line, question, expected) => {
    expect(lineFit({ ...LINE, ...line }, question)).toBe(expected);
  });

  it.each<[string, RegisterQuestion, boolean]>([
    ['that day itself isn’t before it', { dueBefore: '2026-03-14' }, false],
    ['the day before is', { dueBefore: '2026-03-15' }, true],
    ['of another part', { dueBefore: '2026-03-15', part: 'other' }, false],
    ['of a serial that is meant', { serials: range }, true],
    ['of one that isn’t', { serials: serialList(['0151']) }, false],
  ])('a check: %s', (_name, question, expected) => {
    expect(checkFits(CHECK, question)).toBe(expected);
  });

  it('leaves names, addresses and free words out where they shall not be seen', () => {
    const told = JSON.stringify([lineWithoutNames(LINE), checkWithoutNames(CHECK)]);
    expect(told).not.toMatch(/Reed|Sedge|crew 2|reed-hollow/);
    expect(told).toMatch(/0150.*UF-901.*Shed/);
  });
});
