import type { Reason } from '../model/reason.js';
import { kindWords } from './kind-words.js';
import { say } from './reasons/say.js';
import { tagList } from './tag-list.js';

/** Why a clause that puts a protector somewhere asks for none here, in a few words; a code without an entry is said in full. */
const NOT_ASKED: Readonly<Record<string, string>> = {
  'wind-premises/no-turbine': 'no wind turbine',
  'wind-premises/elsewhere': 'stands elsewhere',
  'feeder/no-unit': 'no dwelling unit or sleeping rooms there',
  'service/not-of-clause': 'no dwelling unit or sleeping rooms',
  'service-place/shared': 'stands at the service',
  'standing/no-protector': 'no protector',
};

/** Why a clause asks for nothing here. */
export function notAskedInShort(because: Reason): string {
  if (because.code === 'standing/no-equipment' || because.code === 'standing/no-port') {
    const [kind = 'equipment'] = because.values.kinds;
    return `no ${kind === 'service' ? 'utility service' : kindWords(kind)}`;
  }
  if (because.code === 'service/not-of-clause' && because.values.units.length > 0) {
    const { units } = because.values;
    return `no dwelling unit or sleeping rooms at the service itself; it feeds one through ${tagList(units)}: the authority having jurisdiction decides`;
  }
  return NOT_ASKED[because.code] ?? say(because);
}

/** Articles that ask for protectors of other equipment (numbers from memory): nobody shall take them for looked at. */
export const OTHER_ARTICLES =
  'Not looked at, where the edition in force has them: 620.51 (elevators), 645.18 (information technology), 670.6 (industrial machinery), 695.15 (fire pumps), 700.8 (emergency systems), 708.20 (critical operations).';
