import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { JobPhoto } from '../parts/context.js';

export const PhotoSchema = z.object({
  caption: z.string(),
  source: z.string().regex(/^data:image\/(png|jpeg);base64,[A-Za-z0-9+/=]+$/),
});

/** The photos with what they show and the protectors that belong there. */
export function photoViews(plan: Plan, photos: readonly JobPhoto[]): z.infer<typeof PhotoSchema>[] {
  return photos.map((photo) => {
    const equipment = plan.site.equipments.find((e) => e.tag === photo.tag);
    const protectors = plan.protectors
      .filter((p) => p.ports.some((port) => port.equipment === photo.tag))
      .map((p) => p.tag);
    const place = equipment === undefined || equipment.place === '' ? '' : `, ${equipment.place}`;
    const own = photo.caption === photo.tag ? '' : `. ${photo.caption}`;
    const belongs = protectors.length === 0 ? 'no protector' : protectors.join(', ');
    return { caption: `${photo.tag}${place}: ${belongs}${own}`, source: photo.dataUrl };
  });
}
