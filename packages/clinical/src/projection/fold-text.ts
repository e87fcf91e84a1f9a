/** Text as it is searched: lower case, accents off, runs of space as one, so that "Muñoz" is found by "munoz". */
const combiningMarks = /[\u0300-\u036f]/g;
/** Letters that do not come apart into a base and a mark. */
const whole: Readonly<Record<string, string>> = {
  ß: 'ss',
  ø: 'o',
  æ: 'ae',
  œ: 'oe',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
};

export const searchable = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(combiningMarks, '')
    .replace(/[ßøæœłđðþı]/g, (letter) => whole[letter] ?? letter)
    .replace(/[\u2019'`]/g, '')
    .replace(/\s+/g, ' ')
    .trim();

export const digitsOf = (text: string): string => text.replace(/\D/g, '');
