import type { PuppeteerNode } from 'puppeteer-core';
import { homeFolder } from './cache-folder.js';

/**
 * Loads the library that drives the browser. It asks for the user's home as it is loaded, and fails where there is none:
 * the cache folder then stands in for it.
 * @param cache a folder of this user alone
 */
export async function loadDriver(cache: string): Promise<Pick<PuppeteerNode, 'launch'>> {
  if (homeFolder() === undefined) process.env['HOME'] = cache;
  const { default: driver } = await import('puppeteer-core');
  return driver;
}
