import { describe, expect, it } from 'vitest';
import { DELIMITERS, findHeading, likelyAmong, likelyHeading } from '../../src/read/table/find-heading.js';
import { headingIndex } from '../../src/read/table/headings.js';
import { LIST_VOCABULARY } from '../../src/read/table/list-vocabulary.js';

const INDEX = headingIndex(LIST_VOCABULARY, new Map());

describe('the heading of a list of which no heading is known', () => {
  it.each([
    ['semicolons, commas in figures', 'Teil;Zahl, Maß;Ort\nA;4,5;H\nB;1,25;H\n', ';', 1],
    ['semicolons, as many commas in every row', 'Teil;Länge;Ort\nA;4,5;H, oben\nB;1,25;H, unten\n', ';', 1],
    ['commas, semicolons in cells', 'Pièce,Vers,Lieu\nA,B; C,H\nB,C; D,H\n', ',', 1],
    ['tabs', 'Pieza\tHacia\tLugar\nA\tB\tH\n', '\t', 1],
    ['bars', 'Pieza|Hacia|Lugar\nA|B|H\n', '|', 1],
    ['titles above it', 'Liste, Stand 3\n\nTeil;Zahl;Ort\nA;4;H\nB;1;H\n', ';', 3],
    ['a title that fills its line with delimiters', 'Liste;;\nTeil;Zahl;Ort\nA;4;H\nB;1;H\n', ';', 2],
  ])('%s', (_, text, delimiter, line) => {
    expect(likelyHeading(text, DELIMITERS)).toMatchObject({ delimiter, line, known: 0 });
  });

  it('is nowhere where nothing parts the lines', () => {
    expect(likelyHeading('Teil\nA\nB\n', DELIMITERS)).toBeNull();
  });
});

describe('the heading of a sheet of which no heading is known', () => {
  it.each([
    ['its first line', ['Teil|Zahl|Ort', 'A|4|H'], 1],
    ['below a title and a blank line', ['Liste, Stand 3||', '||', 'Teil|Zahl|Ort', 'A|4|H'], 3],
    ['with a column too many', ['Teil|Zahl|Ort|Art|', 'A|4|H|x|3'], 1],
    ['nowhere among figures', ['1|2', '3|4'], undefined],
  ])('%s', (_, lines, line) => {
    const cells = lines.map((record) => record.split('|'));
    const place = likelyAmong(
      cells,
      cells.map((_record, i) => i + 1),
    );
    expect(place?.line).toBe(line);
  });
});

describe('the delimiter of a list whose heading line is stated', () => {
  it.each([
    ['no heading known', 'Teil;Zahl;Ort\nA;4,5;H\nB;1,25;H\n', 1, ';', 0],
    ['no heading known, below a title', 'Liste, Stand\nTeil;Zahl;Ort\nA;4,5;H\n', 2, ';', 0],
    ['one heading known', 'Tag, Nr;kind;Ort\nA;4,5;H\nB;1,25;H\n', 1, ';', 1],
  ])('%s', (_, text, line, delimiter, known) => {
    expect(findHeading(text, INDEX, DELIMITERS, line)).toMatchObject({ delimiter, line, known });
  });
});

describe('of two delimiters under which as many headings are known', () => {
  it('the one that parts the rows as it parts the heading is taken', () => {
    const text = 'tag;x,kind;y,z\nA;1,5;2,5\nB;1,5;2,5\n';
    expect(findHeading(text, INDEX, DELIMITERS, 1)).toMatchObject({ delimiter: ';', known: 1 });
  });
});
