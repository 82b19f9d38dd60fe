import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { AsBuiltWords } from '../../words/languages/as-built-words.js';
import type { JobPhoto, RecordPhoto } from '../parts/context.js';
import { equipmentOf } from '../parts/site-index.js';

export const PhotoSchema = z.object({
  caption: z.string(),
  source: z.string().regex(/^data:image\/(png|jpeg);base64,[A-Za-z0-9+/=]+$/),
});

/** The photos with what they show and the protectors that belong there. */
export function photoViews(plan: Plan, photos: readonly JobPhoto[]): z.infer<typeof PhotoSchema>[] {
  const protectorsAt = new Map<string, Set<string>>();
  for (const { tag, ports } of plan.protectors) {
    for (const { equipment } of ports) {
      const tags = protectorsAt.get(equipment) ?? new Set();
      protectorsAt.set(equipment, tags.add(tag));
    }
  }
  return photos.map((photo) => {
    const equipment = equipmentOf(plan, photo.tag);
    const protectors = [...(protectorsAt.get(photo.tag) ?? [])];
    const place = equipment === undefined || equipment.place === '' ? '' : `, ${equipment.place}`;
    const own = photo.caption === photo.tag ? '' : `. ${photo.caption}`;
    const belongs = protectors.length === 0 ? 'no protector' : protectors.join(', ');
    return { caption: `${photo.tag}${place}: ${belongs}${own}`, source: photo.dataUrl };
  });
}

/** The photos that came with the record, by the protector that they belong to. */
export function recordPhotoViews(
  photos: readonly RecordPhoto[],
  words: AsBuiltWords,
): z.infer<typeof PhotoSchema>[] {
  return photos.map(({ tags, file, dataUrl }) => ({
    caption: words.photos.caption(tags.join(', '), file),
    source: dataUrl,
  }));
}
