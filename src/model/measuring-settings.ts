import { z } from 'zod';

/** What a meter should read before a protector is connected, and how long to wait; what no standard fixes a company may. */
export const measuringSettings = z.strictObject({
  /** V; the most from a grounded pole, a bonded N or a grounded phase to ground: common practice, no source. */
  groundedMost: z.number().positive().max(50).default(5),
  /** V; the most from N to PE of a TT system: common practice, no source. */
  neutralToEarthTt: z.number().positive().max(50).default(15),
  /** Share of Voc(STC) that a string gives in full sun at least: common practice, no source. */
  fullSunShare: z.number().positive().max(1).default(0.8),
  /** Share of the nominal that an inverter, a generator or any source of `iec` may stand off it: common practice, no source. */
  aroundNominal: z.number().positive().max(0.1).default(0.1),
  /** Share of pole to pole under which one pole of a floating pair has a ground fault: common practice, no source. */
  faultedPoleShare: z.number().positive().max(0.5).default(0.05),
  /** Share of pole to pole above which the other one then stands: common practice, no source. */
  otherPoleShare: z.number().min(0.5).max(1).default(0.9),
  /** A; above it shock and arc-flash protection is settled before the enclosure is opened: common practice, no source. */
  clothingFaultCurrent: z.number().nonnegative().max(1e6).default(10_000),
  /** min; how long capacitors keep their charge where the maker says nothing: common practice, no source. */
  waitMinutes: z.number().positive().max(120).default(5),
});

export type MeasuringSettings = z.infer<typeof measuringSettings>;
