/** The last digit of a GTIN or SSCC, that catches a mistyped one. GS1 General Specifications, section 7.9. */

/** @param digits all but the check digit. Weights 3, 1, 3, 1 ... from the right. */
export function checkDigitOf(digits: string): number {
  return (10 - (weightedSum(digits) % 10)) % 10;
}

export function weightedSum(digits: string): number {
  let sum = 0;
  for (let fromRight = 0; fromRight < digits.length; fromRight++) {
    const digit = Number(digits[digits.length - 1 - fromRight]);
    sum += fromRight % 2 === 0 ? digit * 3 : digit;
  }
  return sum;
}

/** @param number digits with the check digit last; anything else is not right. */
export const hasRightCheckDigit = (number: string): boolean =>
  /^\d{2,18}$/.test(number) && checkDigitOf(number.slice(0, -1)) === Number(number.at(-1));
