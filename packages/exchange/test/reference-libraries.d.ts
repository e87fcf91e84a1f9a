/** The two reference libraries that ship no types, as far as the tests use them. */
declare module '@lhncbc/ucum-lhc' {
  const ucum: {
    UcumLhcUtils: {
      getInstance(): {
        convertUnitTo(
          from: string,
          value: number,
          to: string,
          options: { molecularWeight?: number },
        ): { toVal: number | null };
      };
    };
  };
  export default ucum;
}
declare module 'nhs-number-validator' {
  const validator: { validate(number: string): boolean };
  export default validator;
}
