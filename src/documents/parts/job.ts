import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { Basis } from '../../model/editions.js';
import type { DocumentContext } from './context.js';

/** How each basis is called on paper. */
export const BASIS_TITLES: { readonly [B in Basis]: string } = {
  'nec-2017': 'NEC (NFPA 70), 2017 edition',
  'nec-2020': 'NEC (NFPA 70), 2020 edition',
  'nec-2023': 'NEC (NFPA 70), 2023 edition',
  iec: 'IEC 60364 and IEC 61643',
};

export const CompanyViewSchema = z.object({
  name: z.string(),
  address: z.string(),
  phone: z.string(),
  email: z.string(),
  licence: z.string(),
  /** A `data:` URL, `` without a logo. */
  logo: z.string().regex(/^(data:image\/(png|jpeg|svg\+xml);base64,[A-Za-z0-9+/=]+)?$/),
});

export const JobViewSchema = z.object({
  id: z.string(),
  name: z.string(),
  address: z.string(),
  basis: z.string(),
  earthing: z.string(),
  occupancy: z.string(),
  revision: z.string(),
  date: z.string(),
  draft: z.boolean(),
  status: z.string(),
  /** How many items are missing or in conflict, and how many are to be confirmed. */
  openCount: z.number().int(),
  confirmCount: z.number().int(),
  company: CompanyViewSchema,
});
export type JobView = z.infer<typeof JobViewSchema>;

const OCCUPANCY_TEXT = {
  dwelling: 'dwelling',
  sleeping: 'sleeping rooms (dormitory, hotel, patient rooms)',
  other: 'other than a dwelling',
} as const;

/** Text of the mark on every page of a draft. */
export const DRAFT_MARK = 'DRAFT · not for submission';

/** What every document says of its job. Empty texts of the list print as `not stated`. */
export function jobView(plan: Plan, context: DocumentContext): JobView {
  const stated = (text: string): string => (text === '' ? 'not stated' : text);
  const openCount = plan.openItems.filter((i) => i.severity !== 'confirm').length;
  const confirmCount = plan.openItems.length - openCount;
  const { company } = context.settings;
  return {
    id: plan.job,
    name: stated(plan.jobName),
    address: stated(plan.address),
    basis: BASIS_TITLES[plan.basis],
    earthing: plan.basis === 'iec' ? plan.earthing : '',
    occupancy: OCCUPANCY_TEXT[plan.occupancy],
    revision: stated(plan.revision),
    date: context.date,
    draft: !plan.submittable,
    status: plan.submittable ? 'Complete' : 'DRAFT: open items, not for submission',
    openCount,
    confirmCount,
    company: {
      name: company.name,
      address: company.address,
      phone: company.phone,
      email: company.email,
      licence: company.licence,
      logo: context.logo ?? '',
    },
  };
}

/** Job and name for a margin box. */
export function jobMargin(plan: Plan): string {
  return plan.jobName === '' ? plan.job : `${plan.job} · ${plan.jobName}`;
}
