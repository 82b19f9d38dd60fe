import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { JobPhoto } from '../parts/context.js';
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
