/** What a telephone dials: digits, and the plus before a country. */
export const telephone = (number: string) => `tel:${number.replace(/[^\d+]/g, '')}`;
