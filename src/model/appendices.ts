/** What is printed only when it is asked for: whole calculations, rejected parts, where each fact comes from, why each decision fell, ports without a protector. */
export const APPENDICES = ['working', 'rejected', 'sources', 'trace', 'bare'] as const;
export type Appendix = (typeof APPENDICES)[number];
