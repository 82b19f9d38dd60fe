import type { Unit } from 'mathjs';
import { expect } from 'vitest';
import type { Step, Working } from '../../src/model/step.js';
import { SURENESSES } from '../../src/model/fact.js';
import { englishSteps, type EnglishStep } from '../in-english.js';
import { mathematics } from './mathematics.js';

/** Writes a printed calculation in the terms of the library that evaluates it, units included. */
function inLibraryTerms(text: string): string {
  return text
    .replaceAll('×', '*')
    .replaceAll('µ', 'u')
    .replaceAll('π', 'pi')
    .replaceAll('²', '^2')
    .replaceAll('ln(', 'log(')
    .replaceAll('1/(km^2 a)', '/ km^2')
    .replaceAll('%/°C', '* 0.01 / K')
    .replaceAll('mV/cell/°C', 'mV/K')
    .replaceAll(' cells', '')
    .replaceAll('°C', 'K')
    .replaceAll('/min', '/minute')
    .replaceAll(/(\d) 1\//g, '$1 / ');
}

function magnitude(result: Unit | number, unit: string): number {
  if (typeof result === 'number') return result;
  return unit === ''
    ? (result.toJSON() as { value: number }).value
    : result.toNumber(inLibraryTerms(unit).replace('1/a', ''));
}

const results = new Map<string, Unit | number | boolean>();

/** What a printed calculation comes to; workings repeat many, and each text is evaluated once. */
function evaluated(text: string): Unit | number | boolean {
  const result = results.get(text) ?? (mathematics.evaluate(text) as Unit | number | boolean);
  results.set(text, result);
  return result;
}

/** Expects that the figures put into a step's formula give the value that stands beside them, with its unit. */
export function expectEvaluates(step: EnglishStep): void {
  const result = evaluated(inLibraryTerms(step.substituted));
  if (typeof result === 'boolean') {
    expect(result, step.substituted).toBe(true);
    return;
  }
  const found = magnitude(result, step.unit);
  // Figures are printed to four digits.
  expect(Math.abs(found - step.value), `${step.substituted} = ${step.value}`).toBeLessThanOrEqual(
    Math.abs(step.value) * 2e-3 + 1e-9,
  );
}

/** Whether a formula names a symbol: as a whole, `Voc` not within `Voc,max`. */
function names(formula: string, symbol: string): boolean {
  const [before, after] = ['(?<![A-Za-z0-9,/])', '(?![A-Za-z0-9]|,[A-Za-z])'];
  return new RegExp(`${before}${symbol.replaceAll(/[^A-Za-z0-9]/g, '\\$&')}${after}`).test(formula);
}

/** Expects that a step rests on those symbols that its formula names: no less, no other. */
function expectItsSymbols(step: Step, formula: string, before: readonly Step[]): void {
  for (const symbol of step.uses)
    expect([formula, symbol, names(formula, symbol)]).toEqual([formula, symbol, true]);
  const named = before.map((s) => s.symbol).filter((symbol) => names(formula, symbol));
  expect([formula, step.uses]).toEqual([formula, expect.arrayContaining(named)]);
}

/** Expects a working that a reader can follow: every step named and sourced, every computed one right as printed. */
export function expectSound(working: Working): void {
  const last = working.steps.at(-1);
  expect(last?.value).toBe(working.value);
  expect(last?.unit).toBe(working.unit);
  expect(new Set(working.steps.map((s) => s.symbol)).size).toBe(working.steps.length);
  for (const [i, step] of englishSteps(working).entries()) {
    const [own, before] = [working.steps[i], working.steps.slice(0, i)];
    if (own) expectItsSymbols(own, step.formula, before);
    expect(step.symbol).toMatch(/^[A-Za-z]/);
    expect(step.says.length).toBeGreaterThan(3);
    expect(step.source.length).toBeGreaterThan(3);
    expect(SURENESSES).toContain(step.sure);
    expect(Number.isFinite(step.value)).toBe(true);
    expect(step.formula === '').toBe(step.substituted === '');
    if (step.substituted !== '') expectEvaluates(step);
    if (step.sure === 'memory') expect(step.source).toContain('from memory');
    if (step.sure === 'common practice') expect(step.source).toBe('common practice, no source');
  }
}

/** Symbols with their units, in order: `Voc V`. */
export function symbols(working: Working): string[] {
  return working.steps.map((s) => `${s.symbol} ${s.unit}`.trim());
}
