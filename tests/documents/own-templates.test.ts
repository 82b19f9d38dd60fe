import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { checkOwnTemplates } from '../../src/documents/parts/own-templates.js';
import { SHIPPED_TEMPLATES } from '../../src/documents/parts/templates.js';
import { Failure } from '../../src/model/failure.js';
import { SettingsSchema } from '../../src/model/settings.js';
import { told } from '../../src/words/messages/told.js';

const work = mkdtempSync(join(tmpdir(), 'shuntbook-own-templates-'));
afterAll(() => {
  rmSync(work, { recursive: true, force: true });
});

let folders = 0;

/** A folder of templates with these files. */
function folderOf(files: Readonly<Record<string, string>>): string {
  const folder = join(work, String((folders += 1)));
  mkdirSync(folder);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
}

/** What is told of a folder that is refused. */
async function refusal(
  folder: string,
): Promise<{ code: string; status: number; message: string; hint: string }> {
  const failure = await checkOwnTemplates(folder).then(
    () => undefined,
    (error: unknown) => error,
  );
  if (!(failure instanceof Failure)) throw new Error('the folder was not refused');
  const { message, hint } = told(failure.note);
  return { code: failure.note.code, status: failure.exitStatus, message, hint };
}

describe('templates of a company', () => {
  it('are taken where each goes before one of ours, or is a partial of its own; other files are nobody’s matter', async () => {
    const folder = folderOf({
      'permit-sheet/notes.hbs': '<h2>{{title}}</h2>',
      'partials/our-own.hbs': '<p>ours</p>',
      'styles/labels.css': 'p { color: #000; }',
      'read-me.txt': 'Whose templates these are.',
    });
    await expect(checkOwnTemplates(folder)).resolves.toBeUndefined();
  });

  it.each([
    ['a missing folder', undefined, 'documents/no-templates', 64, 'nowhere'],
    [
      'a file that goes before none of ours',
      { 'permit-sheet/note.hbs': '' },
      'documents/template-unknown',
      70,
      'permit-sheet/notes.hbs',
    ],
    [
      'a misspelt folder',
      { 'permit-sheets/notes.hbs': '' },
      'documents/template-unknown',
      70,
      'permit-sheet',
    ],
    [
      'the permit sheet of an earlier shuntbook',
      { 'permit-sheet/document.hbs': '' },
      'documents/template-replaced',
      70,
      'permit-sheet/sheets.hbs',
    ],
    [
      'its styles',
      { 'styles/permit-sheet.css': '' },
      'documents/template-replaced',
      70,
      'styles/permit-frame.css',
    ],
    [
      'a template that doesn’t parse',
      { 'permit-sheet/notes.hbs': '<ol>{{#each rows}}<li>{{text}}</li></ol>' },
      'documents/template',
      70,
      'permit-sheet/notes.hbs can’t be used: it doesn’t parse at line 1, near “',
    ],
  ])('are refused with one message that says what to change: %s', async (_, files, code, status, named) => {
    const given = files === undefined ? join(work, 'nowhere') : folderOf(files);
    const found = await refusal(given);
    expect([found.code, found.status]).toEqual([code, status]);
    expect(found.message).toContain(named);
    expect(found.message).not.toContain('\n');
    expect(found.hint).not.toBe('');
  });
});

/** Every file that could be replaced before permit sheets became drawing sheets. */
const BEFORE = [
  'closeout-pack/document.hbs',
  'labels/document.hbs',
  'owner-sheet/document.hbs',
  'partials/calculation.hbs',
  'partials/calculations-short.hbs',
  'partials/calculations.hbs',
  'partials/caution.hbs',
  'partials/draft-box.hbs',
  'partials/head.hbs',
  'partials/job-facts.hbs',
  'partials/legend.hbs',
  'partials/not-placed.hbs',
  'partials/open-items.hbs',
  'partials/schedule.hbs',
  'partials/sources.hbs',
  'partials/wiring-note.hbs',
  'permit-sheet/document.hbs',
  'report/document.hbs',
  'styles/base.css',
  'styles/closeout-pack.css',
  'styles/drawing.css',
  'styles/labels.css',
  'styles/owner-sheet.css',
  'styles/permit-sheet.css',
  'styles/report.css',
  'styles/safety.css',
] as const;

describe('templates and settings of the shuntbook before', () => {
  it.each(BEFORE)('%s is taken, or refused with where its contents went', async (file) => {
    const folder = folderOf({ [file]: '' });
    const refused = await checkOwnTemplates(folder).then(
      () => undefined,
      () => refusal(folder),
    );
    if (refused === undefined) return;
    expect(refused.code).toBe('documents/template-replaced');
    const named =
      refused.message
        .split(': ')
        .slice(1)
        .join(': ')
        .match(/[\w-]+\/[\w-]+\.(?:hbs|css)|report\.html/g) ?? [];
    expect(named).not.toEqual([]);
    for (const one of named)
      expect(one === 'report.html' || existsSync(join(SHIPPED_TEMPLATES, one))).toBe(true);
  });

  it('settings that name every field of then are taken as they are', () => {
    const before = {
      company: { name: 'A', address: '', phone: '', email: '', licence: '', logo: '', accent: '#1f4e79' },
      paper: 'by-basis',
      units: { length: 'by-basis', temperature: 'C' },
      basis: 'nec-2023',
      ownerLanguage: 'en',
      thresholds: {
        longRunNec: 30.48,
        longRunIec: 10,
        servicePlaceRun: 3,
        continuousShare: 1.15,
        controlAcShare: 1.25,
        withstandShare: 0.8,
        serviceNominalCurrent: 10000,
        otherNominalCurrentNec: 3000,
        nominalCurrentIec: 5000,
        lightningNominalCurrentNec: 20000,
        lightningImpulseCurrentIec: 12500,
        shortCircuitShare: 1.25,
        leadLength: 0.5,
        leadPeakNec: 3000,
        leadPeakIec: 5000,
        controlVoltage: 60,
        leastReach: 10,
        reachSlope: 25,
      },
      inverterDcLink: true,
      conductorColours: {
        nec: {
          positive: 'red',
          negative: 'black',
          L1: 'black',
          L2: 'red',
          L3: 'blue',
          N: 'white',
          ground: 'green',
        },
        necHighLeg: 'orange',
        iec: {
          positive: 'red',
          negative: 'white',
          L1: 'brown',
          L2: 'black',
          L3: 'grey',
          N: 'blue',
          ground: 'green-yellow',
        },
      },
      labels: { columns: 2, rows: 5, marginTop: 12.7, marginLeft: 4, gapColumns: 4.8, gapRows: 0 },
    };
    expect(SettingsSchema.parse(before)).toMatchObject(before);
  });
});
