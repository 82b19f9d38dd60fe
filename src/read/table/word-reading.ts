/** What became of a word of a list in a column of kinds, systems or yes and no. */
export interface WordReading {
  readonly field: string;
  readonly heading: string;
  /** As typed. */
  readonly text: string;
  readonly cells: number;
  /** What it stands for by the words of the column map or of the settings; null: neither says. */
  readonly means: string | null;
  /** True where a fact was made of it. */
  readonly taken: boolean;
  /** Of a word that wasn't understood: the known word that comes nearest, or the few that there are. */
  readonly nearest: string | null;
}
