/**
 * Two models with one key are one model: case, blanks and punctuation don't count, but a mark between two digits does (`1.5` isn't `15`),
 * and so does a plus.
 */
function key(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/(\d)[^\p{L}\p{N}+]+(?=\d)/gu, '$1.')
    .replace(/[^\p{L}\p{N}+.]|(?<!\d)\.|\.(?!\d)/gu, '');
}

/**
 * The key by which a list and the equipment library meet; a name of marks alone is only itself.
 * @param maker as typed
 * @param model as typed
 */
export function modelKey(maker: string, model: string): string {
  return `${key(maker) || maker.trim()}\n${key(model) || model.trim()}`;
}
