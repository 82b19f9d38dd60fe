import type { Step, StepCode } from '../../model/step.js';
import { current } from '../figures.js';
import { figuresPutIn } from './told.js';
import { figured, fine, number } from './step-words.js';

type Of<C extends StepCode> = Extract<Step, { readonly code: C }>;

/** The first step of a code. */
function find<C extends StepCode>(steps: readonly Step[], code: C): Of<C> | undefined {
  return steps.find((one): one is Of<C> => one.code === code);
}

const result = ({ value, unit }: Step): string =>
  `${String(Number(value.toPrecision(4)))}${unit === '' ? '' : ` ${unit}`}`;

function coldVoltage(steps: readonly Step[], last: Of<'cold-voltage/string'>): string {
  const { module, modules, factor: exact } = last.values;
  const product = `${figured(module)} × ${figured(modules)} × ${fine(exact)}`;
  const factor = find(steps, 'cold-voltage/factor');
  const lowest = find(steps, 'cold-voltage/lowest-temperature');
  if (factor) {
    const { change, lowest: coldest, reference, module: of } = factor.values;
    return `F = 1 + (${figured(change)}) × (${figured(coldest)} - ${figured(reference)}) / ${figured(of)} = ${fine(exact)}; ${product}`;
  }
  const table = find(steps, 'cold-voltage/factor-of-table');
  if (table && lowest) return `F = ${fine(exact)} (Table 690.7(A), ${result(lowest)}); ${product}`;
  return product;
}

function battery(steps: readonly Step[], last: Of<'battery-voltage/battery'>): string {
  const cell = find(steps, 'battery-voltage/compensated-cell');
  const of = cell === undefined ? '' : `cell: ${figuresPutIn(cell)} = ${result(cell)}; `;
  return `${of}${figuresPutIn(last)} cells`;
}

function acLarger(steps: readonly Step[], last: Of<'ac-voltage/larger'>): string {
  const highest = find(steps, 'ac-voltage/highest');
  const share = find(steps, 'ac-voltage/share');
  if (!highest || !share) return figuresPutIn(last);
  const lines = find(steps, 'ac-voltage/between-lines') ? ' (line to line)' : '';
  return `larger of ${figuresPutIn(highest)} = ${result(highest)} and ${figuresPutIn(share)}${lines}`;
}

function controlLarger(steps: readonly Step[], last: Of<'control-voltage/larger'>): string {
  const share = find(steps, 'control-voltage/share');
  const charge = find(steps, 'control-voltage/battery');
  if (!share || !charge) return figuresPutIn(last);
  return `larger of ${figuresPutIn(share)} = ${result(share)} and charge voltage ${figuresPutIn(charge)}`;
}

function link(steps: readonly Step[], last: Of<'inverter-link/peak'>): string {
  const highest = find(steps, 'inverter-link/highest-of-range') ?? find(steps, 'inverter-link/highest');
  return highest === undefined
    ? figuresPutIn(last)
    : `${number(last.values.factor)} × ${figuresPutIn(highest)} (peak of the AC output)`;
}

function transformer(steps: readonly Step[], last: Of<'fault-current/transformer'>): string {
  const power = find(steps, 'fault-current/transformer-power');
  const impedance = find(steps, 'fault-current/transformer-impedance');
  const of = power && impedance ? `${result(power)}, ${result(impedance)}, ` : '';
  return `${of}unlimited supply ahead of ${last.values.at}`;
}

function together({ values }: Of<'fault-current/together'>): string {
  const { each, of, apart, without } = values;
  const sum = of
    .map((tag, i) => `${tag} ${each[i] === undefined ? '' : current(each[i].value)}`.trim())
    .join(' + ');
  return [
    sum,
    ...(apart.length > 0 ? [`${apart.join(', ')} only in place of that`] : []),
    ...(without.length > 0 ? [`${without.join(', ')} not known`] : []),
  ].join('; ');
}

function leadVoltage(steps: readonly Step[]): string {
  const all = find(steps, 'leads/inductance');
  const held = find(steps, 'leads/inductance-in-level');
  const rise = find(steps, 'leads/current-rise');
  if (!all || !rise) return '';
  const less = held === undefined ? '' : `, less ${result(held)} (6 in, within the rating)`;
  const wave = `8/20 µs, ${String(rise.values.peak.value / 1000)} kA`;
  return `L = ${figuresPutIn(all)} = ${result(all)}${less}; × ${result(rise)} (${wave})`;
}

function riskLevel(steps: readonly Step[], last: Of<'exposure/risk-level'>): string {
  const lines = find(steps, 'exposure/weighted-length');
  const of = lines === undefined ? '' : `LP = ${figuresPutIn(lines)} = ${result(lines)}; `;
  return `${of}${figuresPutIn(last)}`;
}

/**
 * The working of a calculation in one line, with its figures: what the full one says in a table.
 * @param steps of a calculation, the result last
 * @returns `` where its last step is a figure that is taken, and nothing is to be said of it
 */
export function workingInShort(steps: readonly Step[]): string {
  const last = steps.at(-1);
  if (last === undefined) return '';
  switch (last.code) {
    case 'cold-voltage/string':
      return coldVoltage(steps, last);
    case 'array-voltage/stated':
      return `${last.values.array}, as its maker states the string`;
    case 'array-voltage/stand-in':
      return `not known: the most that ${last.values.converter} bears stands in`;
    case 'exposure/risk-level':
      return riskLevel(steps, last);
    case 'input-limit/converter':
      return `the most that ${last.values.converter} bears`;
    case 'inverter-link/peak':
      return link(steps, last);
    case 'turbine-voltage/stated':
      return `${last.values.turbine} without load at its highest speed${last.values.lineToLine ? ', line to line' : ''}, by its maker`;
    case 'battery-voltage/stated':
      return `${last.values.battery}, highest voltage by its maker`;
    case 'battery-voltage/battery':
      return battery(steps, last);
    case 'ac-voltage/larger':
      return acLarger(steps, last);
    case 'control-voltage/larger':
      return controlLarger(steps, last);
    case 'array-current/stated':
      return 'short-circuit current of the array';
    case 'array-current/total':
      return `${figuresPutIn(last)}: all that reach it`;
    case 'fault-current/own':
      return 'available there';
    case 'fault-current/upstream':
      return `available at ${last.values.at.join(', ')}, upper bound here`;
    case 'fault-current/transformer':
      return transformer(steps, last);
    case 'fault-current/together':
      return together(last);
    case 'fault-current/of-battery':
      return `available from ${last.values.battery}`;
    case 'nominal-current/least':
      return 'least at any place';
    case 'nominal-current/service':
      return 'at a service';
    case 'nominal-current/service-with-lightning-protection':
      return 'at a service with a lightning protection system';
    case 'nominal-current/fed-panel':
      return 'at a panel that a feeder supplies';
    case 'leads/voltage':
    case 'leads/voltage-beyond-level':
      return leadVoltage(steps);
    default:
      return figuresPutIn(last);
  }
}
