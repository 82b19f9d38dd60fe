import { writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { freshFolder, shuntbook } from './command.js';

const HEADINGS = 'part,channels,mcov_ac,up,up_basis,in_ka,sccr_ka,type,enclosure,listing';

function file(name: string, ...lines: readonly string[]): string {
  const path = join(freshFolder(), name);
  writeFileSync(path, `${lines.join('\n')}\n`);
  return path;
}

describe('shuntbook catalogue', () => {
  it('names what each part may be used for, and the gaps', async () => {
    const path = file('parts.csv', HEADINGS, 'ROOM,2,150,600,VPR,20,50,2,1,an invented listing');
    const told = await shuntbook(['catalogue', path]);
    expect(told.status).toBe(0);
    expect(told.out).toMatch(/^ROOM \(line 2\)$/m);
    expect(told.out).toMatch(/solidly grounded: 120, 120\/240, .*\(indoors, service\)$/m);
    expect(told.out).toMatch(/^ {2}120\/240 solidly grounded \(nec-2023\): none outdoors; nearest: ROOM/m);
    expect(told.out).toMatch(/^ {2}480 delta ungrounded \(nec-2023\): none /m);
    expect(told.out).toMatch(/^ {2}120\/240 solidly grounded .*none ahead of the disconnect/m);
  });

  it('says of each row what is wrong with it, by file, line and column', async () => {
    const path = file(
      'parts.csv',
      HEADINGS,
      'ODD,2,150,610,VPR,20,50,2,1,an invented listing',
      'BAD,two,150,600,VPR,20,50,2,1,an invented listing',
      'TINY,2,5,600,VPR,20,50,2,1,an invented listing',
    );
    const { status, err } = await shuntbook(['catalogue', path]);
    expect(status).toBe(0);
    expect(err).toContain(`${basename(path)}, line 2, up\n`);
    expect(err).toContain('[catalogue/vpr-off-list]');
    expect(err).toContain(`${basename(path)}, line 3, channels\n`);
    expect(err).toContain('[catalogue/part-left-out]');
    expect(err).toContain('[catalogue/part-fits-nothing]');
  });

  it('lists the parts that lack a column of overcurrent device and leads, by column', async () => {
    const path = file(
      'parts.csv',
      `${HEADINGS},overcurrent_a,overcurrent_min_a,overcurrent_device,lead_by_instructions,wire_range`,
      'WHOLE,2,150,600,VPR,20,50,2,1,an invented listing,20,15,breaker,no,14 to 6 AWG Cu',
      'FREE,2,150,600,VPR,20,50,2,1,an invented listing,,,none,yes,14 to 6 AWG Cu',
      'HALF,2,150,600,VPR,20,50,2,1,an invented listing,20,,breaker,no,as its instructions say',
      'BARE,2,150,600,VPR,20,50,2,1,an invented listing,,,,,',
    );
    const told = await shuntbook(['catalogue', path]);
    expect(told.out).toMatch(
      /stay open:\n {2}overcurrent_a: BARE\n {2}overcurrent_min_a: HALF, BARE\n {2}overcurrent_device: BARE\n {2}lead_by_instructions: BARE\n {2}wire_range: HALF, BARE\n/,
    );
    expect(told.err).toContain('[catalogue/wire-range-not-read]');
    const whole = file(
      'whole.csv',
      `${HEADINGS},overcurrent_a,overcurrent_min_a,overcurrent_device,lead_by_instructions,wire_range`,
      'WHOLE,2,150,600,VPR,20,50,2,1,an invented listing,20,15,breaker,no,14 to 6 AWG Cu',
    );
    expect((await shuntbook(['catalogue', whole])).out).not.toContain('stay open');
    const { range } = JSON.parse((await shuntbook(['catalogue', path, '--json'])).out) as {
      range: { lacks: unknown[] };
    };
    expect(range.lacks[0]).toEqual({ column: 'overcurrent_a', parts: ['BARE'] });
  });

  it('lists what the models of a library lack, also without a catalogue', async () => {
    const path = file('models.csv', 'maker,model,kind', 'Invented Works,B-1,battery', ',B-2,battery');
    const told = await shuntbook(['catalogue', '--library', path]);
    expect(told.status).toBe(0);
    expect(told.out).toMatch(/Invented Works +B-1 +battery +battery_voltage, battery_chemistry$/m);
    expect(told.err).toContain('[library/model-missing]');
  });

  it('prints one JSON object', async () => {
    const path = file('parts.csv', HEADINGS, 'ROOM,2,150,600,VPR,20,50,2,1,an invented listing');
    const told = await shuntbook(['catalogue', path, '--json']);
    const result = JSON.parse(told.out) as { command: string; range: { lines: unknown[]; parts: unknown[] } };
    expect(result.command).toBe('catalogue');
    expect(result.range.lines.length).toBeGreaterThan(30);
    expect(result.range.parts).toHaveLength(1);
  });

  it('takes the basis of the settings beside the file', async () => {
    const path = file('parts.csv', HEADINGS, 'ROOM,2,150,600,VPR,20,50,2,1,an invented listing');
    writeFileSync(join(path, '..', 'settings.json'), '{"basis":"nec-2017"}');
    expect((await shuntbook(['catalogue', path])).out).toContain('nec-2017');
  });

  it('ends with 2 where a file can not be read, with 64 where none is named', async () => {
    expect((await shuntbook(['catalogue', join(freshFolder(), 'none.csv')])).status).toBe(2);
    const none = await shuntbook(['catalogue']);
    expect(none.status).toBe(64);
    expect(none.err).toContain('[command/nothing-to-check]');
  });

  it('lets no cell steer the screen', async () => {
    const path = file('parts.csv', HEADINGS, '"A\u001b[2JB",2,150,600,VPR,20,50,2,1,an invented listing');
    const told = await shuntbook(['catalogue', path]);
    expect(told.out).not.toContain('\u001b');
  });
});
