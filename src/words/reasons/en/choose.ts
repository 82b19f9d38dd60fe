import type { ChooseReasons } from '../../../model/reasons/choose.js';
import { plain, quantity } from '../../figures.js';
import type { Sayings } from '../sayings.js';

/** How a system that isn't solidly grounded is called. */
const SYSTEMS = {
  ungrounded: 'ungrounded',
  impedance: 'impedance-grounded',
  corner: 'corner-grounded',
} as const;

const sccr = (current: 'ac' | 'dc'): string => (current === 'ac' ? 'SCCR' : 'DC SCCR');
const level = (v: ChooseReasons['level/above-withstand']): string =>
  `${v.basis} ${quantity(v.up)} + leads ${quantity(v.leads)}`;

/** Why a part fits, or doesn't, in English. */
export const CHOOSE: Sayings<ChooseReasons> = {
  'mcov/no-rating': ({ current }) => `no ${current.toUpperCase()} rating`,
  'mcov/below': ({ has, asked }) => `MCOV ${quantity(has)} < ${quantity(asked)}`,
  'level/not-stated': () => 'neither VPR nor Up is stated',
  'level/above-withstand': (v) => `${level(v)} > withstand ${quantity(v.withstand)}`,
  'level/near-withstand': (v) =>
    `${level(v)} > ${v.share === null ? 'the whole' : `${plain(v.share)} % of the`} ${v.assumed ? 'assumed ' : ''}withstand of ${quantity(v.withstand)}`,
  'withstand/not-known': () => 'the withstand behind it isn’t known',
  'discharge/not-stated': () => 'In isn’t stated',
  'discharge/below': ({ has, asked }) => `In ${quantity(has)} < ${quantity(asked)}`,
  'short-circuit/control-circuit': () => 'no fault current is counted on a control circuit',
  'short-circuit/not-stated': () => 'SCCR isn’t stated',
  'short-circuit/not-stated-and-asked': ({ current, asked }) =>
    `${sccr(current)} isn’t stated, and ${quantity(asked)} is asked`,
  'short-circuit/below': ({ current, has, asked }) =>
    `${sccr(current)} ${quantity(has)} < ${quantity(asked)}`,
  'type/control-circuit': () => 'no type is asked on a control circuit',
  'type/third-class': () => 'class T3 where T1 or T2 is asked',
  'type/ahead-of-disconnect': ({ type }) =>
    `${type === null ? 'type not stated' : `type ${type}`} ahead of the disconnect, where type 1 is asked`,
  'type/third': () => 'type 3 where type 1 or 2 is asked',
  'type/not-stated': () => 'its type isn’t stated',
  'class/not-stated': () => 'its part states no IEC class',
  'enclosure/indoors': () => 'no place outdoors',
  'enclosure/not-stated': () => 'its enclosure isn’t stated, and it would stand outdoors',
  'enclosure/other-scale': ({ enclosure }) =>
    `enclosure ${enclosure} isn’t a NEMA type, and the two scales aren’t converted`,
  'enclosure/not-for-outdoors': ({ enclosure }) => `enclosure ${enclosure} isn’t for outdoors`,
  'listing/not-stated': () => 'no listing is stated',
  'listing/iec-alone': () => 'its listing names an IEC standard alone, not UL 1449',
  'listing/other-system': ({ system }) => `isn’t listed for ${SYSTEMS[system]} systems`,
  'listing/is-for': ({ system }) => `is listed for ${SYSTEMS[system]} systems`,
  'listing/turbine-floats': () =>
    'the phases of a turbine float: that it needs no listing for that is an assumption',
  'indication/not-asked': () => 'NEC 2023 alone asks for it',
  'indication/none': () => 'it has no indicator, which 242.9 asks for',
  'indication/not-stated': () => 'its indicator isn’t stated',
  'connection/not-3-plus-1': () => 'connection isn’t 3+1, which a TT system asks for',
  'connection/3-plus-1': () => 'connection 3+1 is for lines and neutral of a TT system',
  'neutral-path/nec': () => 'only IEC 60364 knows connection 3+1',
  'neutral-path/no-tt': () => 'no AC port of a TT system, so no 3+1 part stands here',
  'neutral-path/not-stated': ({ each }) =>
    each
      .map(
        ({ rating, asked }) =>
          `${rating} of its path from neutral to ground isn’t stated, and ${quantity(asked)} is asked`,
      )
      .join('; '),
  'neutral-path/below': ({ rating, has, asked }) =>
    `${rating} of its path from neutral to ground ${quantity(has)} < ${quantity(asked)}`,
  'lightning/nec': () => 'only IEC 60364 asks it of the part itself',
  'lightning/no-system': () => 'the list states no lightning protection system',
  'lightning/control-circuit': () => 'a control circuit has parts of another kind',
  'lightning/elsewhere': () =>
    'neither the service, nor DC of a system that is attached to lightning protection',
  'lightning/class': ({ iecClass }) =>
    `class ${iecClass ?? 'not stated'} where T1 is asked beside a lightning protection system`,
  'impulse/not-stated': () => 'Iimp isn’t stated',
  'impulse/below': ({ has, asked }) => `Iimp ${quantity(has)} < ${quantity(asked)}`,
  'channels/too-few': ({ channels, conductors }) =>
    `${channels} channels for the ${conductors} conductors that share it`,
  'channels/unwired': ({ channels, conductors, unwired }) =>
    `${channels} channels for ${conductors} conductor${conductors === 1 ? '' : 's'} leave ${unwired} unwired`,

  'choice/other-first': ({ part, by }, say) => `${part} goes before it: ${say(by)}`,
  'choice/no-shortfall': () => 'it has no shortfall',
  'choice/strong-outdoors': () =>
    'its In is as high as an AC end of a run outdoors or between buildings asks first (common practice)',
  'choice/lower-mcov': () => 'its MCOV is lower, so it clamps sooner',
  'choice/enclosure-4x': () => 'its enclosure is 4X',
  'choice/lower-level': () => 'its protection level is lower',
  'choice/higher-discharge': () => 'its In is higher',
  'choice/fewer-housings': () => 'it needs fewer housings',
  'choice/lower-price': () => 'its price is lower',
  'choice/part-number': () => 'its part number comes first',
  'choice/first': () => 'it comes first',
  'choice/nearest': ({ part, failures }, say) => `${part} (${failures.map((f) => say(f)).join('; ')})`,
  'range/nearest': ({ circuit, failures }, say) => `${circuit}: ${failures.map((f) => say(f)).join('; ')}`,
  'asks/rating': (v) =>
    [
      `MCOV ${quantity(v.mcov)} ${v.current}`,
      `In ${quantity(v.nominalCurrent)}`,
      ...(v.sccr === null ? [] : [`${sccr(v.current)} ${quantity(v.sccr)}`]),
      ...(v.listedFor === null ? [] : [`a listing for ${v.listedFor} systems`]),
      ...(v.outdoors ? ['an enclosure for outdoors'] : []),
      ...(v.aheadOfDisconnect ? ['type 1'] : []),
    ].join(', '),
  'asks/not-known': () => 'what this place asks for, which isn’t known',
  'holds/up-to': ({ rating }) => `holds up to ${quantity(rating)}`,
  'holds/not-stated': () => 'states no rating to compare it with',
};
