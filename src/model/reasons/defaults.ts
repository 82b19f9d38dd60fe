import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';

/** What a default takes a fact for, and what it decides: code and values. */
export interface DefaultReasons {
  'default-value/not-known': None;
  'default-value/by-category': None;
  'default-value/overhead-lines': { readonly length: Quantity };
  'default-decides/code-and-dc-limit': None;
  'default-decides/voltage-to-ground': None;
  'default-decides/surge-current': None;
  'default-decides/exposure': None;
  'default-decides/risk-level': None;
  'default-decides/worth-protecting': None;
  'default-decides/type': None;
  'default-decides/enclosure-and-runs': None;
  'default-decides/cold-voltage-table': None;
  'default-value/no-backfeed': None;
  'default-decides/withstand': None;
  'default-decides/overcurrent': None;
  'default-decides/voltage-and-lights': None;
  'default-decides/dark-light': None;
  'default-decides/recorded-lights': None;
  'default-decides/spare-channel': None;
  'default-decides/building-left-out': None;
  'default-decides/building-asked': None;
}
