import { PDFDocument, PDFDropdown, PDFTextField } from '@cantoo/pdf-lib';
import { getDocument } from '../../bench/pdf-readers.mjs';

/** What is written into a form, by the name of the field. */
export type Written = ReadonlyMap<string, string>;

/** Fills a form in as one library does it: what is chosen is kept as it is shown. */
export async function filledByOne(form: Uint8Array, written: Written): Promise<Uint8Array> {
  const document = await PDFDocument.load(form, { updateMetadata: false });
  const fields = document.getForm();
  for (const [name, text] of written) {
    const field = fields.getField(name);
    if (field instanceof PDFTextField) field.setText(text);
    else if (field instanceof PDFDropdown) {
      field.enableEditing();
      field.select(text);
    } else throw new Error(`the field ${name} is of another kind`);
  }
  return document.save({ updateFieldAppearances: false });
}

/** Fills a form in as another library does it, which appends to the file what changed. */
export async function filledByAnother(form: Uint8Array, written: Written): Promise<Uint8Array> {
  const document = await getDocument({ data: Uint8Array.from(form), verbosity: 0 }).promise;
  try {
    const objects = (await document.getFieldObjects()) as Readonly<
      Record<string, readonly { readonly id: string; readonly type: string }[]>
    > | null;
    for (const [name, value] of written) {
      const id = objects?.[name]?.find(({ type }) => type !== '')?.id;
      if (id === undefined) throw new Error(`there is no field ${name}`);
      document.annotationStorage.setValue(id, { value });
    }
    return await document.saveDocument();
  } finally {
    await document.destroy();
  }
}
