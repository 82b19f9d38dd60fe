/** What is printed only when it is asked for: whole calculations, rejected parts, where each value comes from, why each protector is there and where its facts were read, ports without a protector. */
export const APPENDICES = ['working', 'rejected', 'sources', 'trace', 'bare'] as const;
export type Appendix = (typeof APPENDICES)[number];
