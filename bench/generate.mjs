// Batches of any size, made from the jobs of the demo: each job again and again, under another id, with other lengths.
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';

const DEMO = fileURLToPath(new URL('../fixtures/demo/', import.meta.url));
const SOURCES = ['off-grid', 'grid', 'country'];
// A file of the office holds some forty jobs.
const JOBS_A_FILE = 40;

/** The demo's jobs: heading and rows of each. */
function demoJobs(demo) {
  return SOURCES.flatMap((source) => {
    const [heading, ...rows] = parse(readFileSync(join(demo, `${source}.csv`), 'utf8'), { bom: true });
    const jobAt = heading.indexOf('job');
    const ids = [...new Set(rows.map((row) => row[jobAt]))];
    return ids.map((id) => ({ source, heading, jobAt, rows: rows.filter((row) => row[jobAt] === id) }));
  });
}

/**
 * Writes a batch: lists with the demo's catalogue, library and settings beside them.
 * @param {string} folder made where it isn't there
 * @param {number} jobs how many
 * @param {string} demo the folder of the demo; that of another commit's checkout, where it is measured against that
 * @returns {string[]} the lists that were written
 */
export function writeBatch(folder, jobs, demo = DEMO) {
  mkdirSync(folder, { recursive: true });
  const kinds = demoJobs(demo);
  const files = new Map();
  for (let i = 0; i < jobs; i += 1) {
    const { source, heading, jobAt, rows } = kinds[i % kinds.length];
    const lengthAt = heading.findIndex((name) => name.startsWith('run_length'));
    const name = `${source}-${Math.floor(i / JOBS_A_FILE)}.csv`;
    const lines = files.get(name) ?? [heading];
    for (const row of rows) {
      const copy = [...row];
      copy[jobAt] = `${row[jobAt]}-${String(i).padStart(4, '0')}`;
      const length = Number(row[lengthAt]);
      if (row[lengthAt] !== '' && Number.isFinite(length)) copy[lengthAt] = String(length + (i % 7));
      lines.push(copy);
    }
    files.set(name, lines);
  }
  for (const [name, lines] of files) writeFileSync(join(folder, name), stringify(lines));
  for (const name of ['catalogue.csv', 'library.csv', 'settings.json'])
    copyFileSync(join(demo, name), join(folder, name));
  return [...files.keys()].map((name) => join(folder, name));
}

/**
 * Changes one job of a batch: the length of its first run.
 * @param {string} file a list that writeBatch wrote
 * @param {number} by added to the length
 */
export function changeOneJob(file, by) {
  const [heading, ...rows] = parse(readFileSync(file, 'utf8'));
  const lengthAt = heading.findIndex((name) => name.startsWith('run_length'));
  const row = rows.find((r) => r[lengthAt] !== '' && Number.isFinite(Number(r[lengthAt])));
  row[lengthAt] = String(Number(row[lengthAt]) + by);
  writeFileSync(file, stringify([heading, ...rows]));
}

/**
 * One list of many rows and few kinds of facts, for reading and planning alone.
 * @param {number} rows in all
 * @param {number} jobs that they belong to
 * @returns {string} the list as CSV
 */
export function bigList(rows, jobs) {
  const heading =
    'job,job_name,lowest_temp (C),lowest_temp_source,tag,kind,description,connects_to,run_length (ft),place,dc_inputs,max_dc_voltage (V),voc_stc (V),isc_stc (A),modules_in_series,strings_in_parallel,voc_coefficient,ac_in,ac_out,fault_current (A)';
  const lines = [heading];
  const each = rows / jobs;
  for (let j = 0; j < jobs; j += 1) {
    const job = `BL-${String(j).padStart(5, '0')}`;
    const put = (tag, kind, rest) =>
      lines.push(
        `${job},${rest.name ?? ''},${rest.cold ?? ''},${rest.name ? 'table of the office (invented)' : ''},${tag},${kind},made for the measurement,${rest.to ?? ''},${rest.run ?? ''},${rest.place},${rest.inputs ?? ''},${rest.most ?? ''},${rest.voc ?? ''},${rest.isc ?? ''},${rest.series ?? ''},${rest.parallel ?? ''},${rest.drift ?? ''},${rest.in ?? ''},${rest.out ?? ''},${rest.fault ?? ''}`,
      );
    put('SVC', 'service', {
      name: `Site ${j}`,
      cold: -10 - (j % 20),
      place: 'House / meter',
      in: '120/240',
      fault: 10_000,
    });
    put('MP', 'panel', { to: 'SVC', run: 6, place: 'House / hall', in: '120/240' });
    put('INV', 'grid-tie-inverter', {
      to: 'MP',
      run: 25,
      place: 'House / garage',
      inputs: 2,
      most: 600,
      out: '240',
    });
    put('ARR-1', 'array', {
      to: 'INV/1',
      run: 90 + (j % 50),
      place: 'House / roof',
      voc: 49.5,
      isc: 11,
      series: 8,
      parallel: 1,
      drift: '-0.27 %/C',
    });
    put('ARR-2', 'array', {
      to: 'INV/2',
      run: 60 + (j % 30),
      place: 'House / roof',
      voc: 49.5,
      isc: 11,
      series: 7,
      parallel: 1,
      drift: '-0.27 %/C',
    });
    for (let r = 5; r < each; r += 1)
      put(`LD-${r}`, 'load', {
        to: 'MP',
        run: 10 + r,
        place: `House / room ${r % 9}`,
        in: r % 2 ? '120' : '240',
      });
  }
  return `${lines.join('\n')}\n`;
}
