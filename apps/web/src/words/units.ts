/** Units as they are printed. What is stored keeps its plain letters. */
export const unitInWords = (unit: string): string => unit.replace('umol', 'µmol').replace('m2', 'm²');
