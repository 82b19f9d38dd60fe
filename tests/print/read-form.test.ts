import { deflateSync } from 'node:zlib';
import type { PDFArray, PDFDict } from '@cantoo/pdf-lib';
import { PDFDocument, PDFHexString, PDFName, PDFString } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { readForm } from '../../src/print/read-form.js';
import { unpacksWithin } from '../../src/print/unpacked-size.js';

// Forms that anyone could send: made by a library that isn't the one that wrote ours.

type Make = (document: PDFDocument, fields: PDFArray) => void;

async function formOf(make: Make): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  document.addPage();
  const fields = document.context.obj([]);
  document.catalog.set(PDFName.of('AcroForm'), document.context.obj({ Fields: fields }));
  make(document, fields);
  return document.save({ updateFieldAppearances: false });
}

const text = (document: PDFDocument, name: string, value: string): PDFDict =>
  document.context.obj({ FT: 'Tx', T: PDFString.of(name), V: PDFHexString.fromText(value) });

async function valuesOf(make: Make): Promise<Readonly<Record<string, string>>> {
  const read = await readForm(await formOf(make));
  if ('fault' in read) throw new Error(read.fault);
  return Object.fromEntries(read.values);
}
const faultOf = async (bytes: Uint8Array): Promise<string> => {
  const read = await readForm(bytes);
  return 'fault' in read ? read.fault : 'none';
};

describe('the fields of a form', () => {
  it('are read by their whole names, whatever is typed', async () => {
    const odd = '=1+1\u0000\u202e\r\n<b>Ł µ 寸</b>';
    const values = await valuesOf((document, fields) => {
      const parent = document.context.obj({ T: PDFString.of('P-1') });
      const kid = text(document, 'serial', odd);
      parent.set(PDFName.of('Kids'), document.context.obj([document.context.register(kid)]));
      fields.push(document.context.register(parent));
      fields.push(document.context.register(text(document, 'plain', 'INV-1')));
    });
    expect(values).toEqual({ 'P-1.serial': odd, plain: 'INV-1' });
  });

  it('have the value of what was chosen, also where a program keeps what it shows', async () => {
    const choice = (document: PDFDocument, name: string, value: string): PDFDict =>
      document.context.obj({
        FT: 'Ch',
        T: PDFString.of(name),
        V: PDFString.of(value),
        Opt: [
          [PDFString.of('lit'), PDFHexString.fromText('SÍ')],
          [PDFString.of('dark'), PDFString.of('NO')],
        ],
      });
    const values = await valuesOf((document, fields) => {
      for (const [name, value] of [
        ['a', 'lit'],
        ['b', 'NO'],
        ['c', 'half'],
      ] as const)
        fields.push(document.context.register(choice(document, name, value)));
    });
    expect(values).toEqual({ a: 'lit', b: 'dark', c: 'half' });
  });

  it('are texts and choices alone: buttons, scripts and actions are passed over', async () => {
    const values = await valuesOf((document, fields) => {
      const { context } = document;
      document.addJavaScript('x', 'app.alert(1)');
      const scripted = text(document, 'a', '1');
      scripted.set(PDFName.of('AA'), context.obj({ K: { S: 'JavaScript', JS: PDFString.of('this.x()') } }));
      fields.push(context.register(scripted));
      fields.push(context.register(context.obj({ FT: 'Btn', T: PDFString.of('b'), V: 'On' })));
      fields.push(context.register(context.obj({ FT: 'Sig', T: PDFString.of('c') })));
    });
    expect(values).toEqual({ a: '1' });
  });

  it('end where they lead back to themselves, or lie too deep', async () => {
    const values = await valuesOf((document, fields) => {
      const { context } = document;
      const round = text(document, 'round', 'x');
      const ref = context.register(round);
      round.set(PDFName.of('Kids'), context.obj([ref]));
      fields.push(ref);
      let deep = context.register(text(document, 'deepest', 'x'));
      for (let i = 0; i < 40; i += 1)
        deep = context.register(context.obj({ T: PDFString.of('d'), Kids: [deep] }));
      fields.push(deep);
      fields.push(context.register(text(document, 'plain', 'y')));
    });
    expect(values).toMatchObject({ plain: 'y' });
    expect(Object.keys(values).some((name) => name.includes('deepest'))).toBe(false);
  });
});

describe('a file that is no form', () => {
  it.each<[string, () => Promise<Uint8Array> | Uint8Array]>([
    ['no-pdf', () => Buffer.from('job,plan,protector')],
    ['broken', () => Buffer.from('%PDF-1.7\nnothing of the kind')],
    ['no-form', async () => (await PDFDocument.create()).save()],
    ['no-form', () => formOf(() => undefined)],
    [
      'too-large',
      () =>
        formOf((document, fields) => {
          fields.push(document.context.register(text(document, 'a', 'x'.repeat(1_000_001))));
        }),
    ],
    ['too-large', () => Buffer.concat([Buffer.from('%PDF-1.7\n'), Buffer.alloc(50_000_001)])],
  ])('is told: %s', async (fault, make) => {
    expect(await faultOf(await make())).toBe(fault);
  });
});

describe('what a file unpacks to', () => {
  const packed = (dictionary: string, bytes: Uint8Array): Buffer =>
    Buffer.concat([
      Buffer.from(`1 0 obj\n<<${dictionary}>>\nstream\n`),
      bytes,
      Buffer.from('\nendstream\nendobj\n'),
    ]);
  const bomb = deflateSync(Buffer.alloc(5_000_000));

  it('is counted over all its streams', () => {
    const one = packed('/Filter /FlateDecode', bomb);
    expect(unpacksWithin(one, 5_000_001)).toBe(true);
    expect(unpacksWithin(one, 4_999_999)).toBe(false);
    expect(unpacksWithin(Buffer.concat([one, one]), 9_000_000)).toBe(false);
  });

  it.each([
    ['packed twice', '/Type /ObjStm /Filter [/FlateDecode /FlateDecode]'],
    ['packed otherwise', '/Type /ObjStm /Filter /LZWDecode'],
    ['packed by what stands elsewhere', '/Type /XRef /Filter 7 0 R'],
    ['packed by a name in escapes', '/Type /Obj#53tm /Filter /LZ#57Decode'],
  ])('is too much where objects are %s', (_, dictionary) => {
    expect(unpacksWithin(packed(dictionary, Buffer.from('x')), 1_000_000)).toBe(false);
  });
});
