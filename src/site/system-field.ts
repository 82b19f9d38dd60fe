import type { SitePort } from '../model/site.js';

/** The field that states the system of an AC port. */
export function systemField({ cls }: SitePort): 'ac_in' | 'ac_in_2' | 'ac_out' {
  if (cls === 'ac-in-2') return 'ac_in_2';
  return cls === 'ac-out' || cls === 'output' ? 'ac_out' : 'ac_in';
}
