import { readFileSync } from 'node:fs';
import type { RunTimePackage } from './run-time-packages.js';

/** Expat's licence isn't in the browser's package; this is how Debian 12 gives it (libexpat1, copyright). */
const EXPAT = `Copyright (C) 1998-2000 Thai Open Source Software Center Ltd and Clark Cooper
Copyright (C) 2001-2017 Expat maintainers

Permission is hereby granted, free of charge, to any person obtaining a copy
of this software and associated documentation files (the "Software"), to
deal in the Software without restriction, including without limitation the
rights to use, copy, modify, merge, publish, distribute, sublicense, and/or
sell copies of the Software, and to permit persons to whom the Software is
furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in
all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR
IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY,
FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE
AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER
LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING
FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS
IN THE SOFTWARE.`;

/**
 * docs/third-party-notices.md: the notices of what others made and every page is printed with, fonts and browser.
 * @param packages of the lock file
 * @returns the page
 * @throws Error where the packages of fonts or browser aren't installed, or there are none
 */
export function noticesPage(packages: readonly RunTimePackage[]): string {
  const titled = (name: string): string => {
    const found = packages.find((p) => p.direct && p.name === name);
    if (!found) throw new Error(`${name} is no dependency`);
    return `\`${name}\` ${found.version}`;
  };
  const [plex, atkinson] = ['@fontsource/ibm-plex-sans-condensed', '@fontsource/atkinson-hyperlegible-next'];
  const signs = titled('dejavu-fonts-ttf');
  const browser = titled('@sparticuz/chromium');
  return `# Notices of third parties

Written by \`npm run docs:supply\`; \`npm run check\` fails while this page is stale. The tarball of shuntbook holds neither fonts
nor browser: npm brings them as the packages named here. Every PDF embeds the glyphs that it uses, and \`report.html\` may
hold whole fonts: their licences allow both.

## Fonts: ${titled(plex)}

IBM Plex Sans Condensed, regular and bold, latin and latin-ext, unaltered.

${quoted(readFileSync(`node_modules/${plex}/LICENSE`, 'utf8'))}

## Fonts: ${titled(atkinson)}

Atkinson Hyperlegible Next, regular and bold, latin and latin-ext, unaltered.

${quoted(readFileSync(`node_modules/${atkinson}/LICENSE`, 'utf8'))}

## Fonts: ${signs}

DejaVu Sans and DejaVu Sans Condensed, regular and bold, unaltered.

${quoted(readFileSync('node_modules/dejavu-fonts-ttf/LICENSE', 'utf8'))}

## Browser: ${browser}

The package that holds the browser, with what starts it elsewhere (not used here):

${quoted(readFileSync('node_modules/@sparticuz/chromium/LICENSE', 'utf8'))}

The browser inside it, Chromium without windows, under the licence of the Chromium Authors. The package doesn’t hold its text;
this is how \`devtools-protocol\`, a package of the same authors, gives it:

${quoted(readFileSync('node_modules/devtools-protocol/LICENSE', 'utf8').replace(/^\/\/ ?/gm, ''))}

Chromium holds many components of others, each under its own licence. **The package doesn’t list them, and neither does this
page**: who passes the browser on takes the list from Chromium’s own sources of that version.

The package brings libraries that a bare Linux lacks, and they are unpacked beside the browser: NSS (\`libnss3\`, \`libnssutil3\`,
\`libsoftokn3\`, \`libfreebl3\`, \`libfreeblpriv3\`) and NSPR (\`libnspr4\`, \`libplc4\`, \`libplds4\`), both under the Mozilla Public
License 2.0, whose text and whose sources Mozilla publishes; and Expat (\`libexpat\`):

${quoted(EXPAT)}

The package also brings drivers for graphics and a family of fonts. shuntbook neither unpacks nor uses them.
`;
}

/** As a block that Markdown leaves as it is. */
const quoted = (text: string): string => `\`\`\`text\n${text.replace(/[ \t\r]+$/gm, '').trim()}\n\`\`\``;
