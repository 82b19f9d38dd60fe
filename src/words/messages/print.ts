import { PRINT_MESSAGES } from '../../model/messages/print.js';
import { says } from '../message-kit.js';

/** One command for each platform that brings a browser. */
const BROWSER_COMMANDS = [
  'Debian or Ubuntu: sudo apt-get install -y chromium',
  'macOS or Windows: npx puppeteer browsers install chrome-headless-shell',
].join('; ');

/** Words of the messages of model/messages/print.ts. */
export const PRINT_WORDS = [
  says(PRINT_MESSAGES.noBrowser, {
    title: 'No browser to print with',
    message: () => 'No browser was found that can print the PDFs.',
    found: (p) => p.tried.join('; '),
    expected: 'a Chromium-based browser',
    hint: `Install one (${BROWSER_COMMANDS}), or name one with --browser or SHUNTBOOK_BROWSER.`,
  }),
  says(PRINT_MESSAGES.browserSubstituted, {
    title: 'Another browser prints than the one that is shipped',
    message: (p) =>
      `The shipped browser didn’t start, so ${p.used} prints; pages may break elsewhere than on another machine.`,
    found: (p) => p.tried.join('; '),
    expected: 'the shipped browser',
    hint: 'Nothing, unless the pages have to be the same everywhere.',
  }),
  says(PRINT_MESSAGES.sandboxOff, {
    title: 'The browser runs without its sandbox',
    message: (p) =>
      `The browser prints without its sandbox, because ${p.root ? 'the program runs as root' : 'this machine’s kernel refuses it'}.`,
    expected: 'a user other than root, on a kernel that allows user namespaces',
    hint: 'Nothing, while lists and templates are your own: the pages run no script and reach no network.',
  }),
  says(PRINT_MESSAGES.notPrinted, {
    title: 'A document couldn’t be printed',
    message: (p) => `${p.title} couldn’t be printed: ${p.because}, twice.`,
    found: (p) => p.detail,
    expected: 'a document that the browser prints within the time allowed',
    hint: 'Run the job again by itself (--job); where it fails again, look for a huge picture or a changed template.',
  }),
  says(PRINT_MESSAGES.fontMissing, {
    title: 'A font isn’t embedded',
    message: (p) =>
      `${p.title} uses ${p.font === '' ? 'a nameless font' : `the font ${p.font}`} that isn’t embedded, so another machine may show other characters.`,
    found: (p) => p.font,
    expected: 'the fonts that are shipped, or @font-face rules with data: addresses',
    hint: 'Use the shipped fonts in your templates: Plex, Atkinson, DejaVu Sans Condensed, DejaVu Sans.',
  }),
  says(PRINT_MESSAGES.cacheRefused, {
    title: 'A cache folder of another user',
    message: (p) => `The folder ${p.folder} can’t hold the browser: ${p.because}.`,
    expected: 'a folder of your own that nobody else may write to',
    hint: 'Remove the folder, or set XDG_CACHE_HOME to one of your own.',
  }),
];
