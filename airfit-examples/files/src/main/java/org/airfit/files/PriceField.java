package org.airfit.files;

import org.airfit.quantity.Money;

/** One price, at least 0 and in a currency of one word: not "0.10 to 0.15 USD", nor "10 c/kWh". */
final class PriceField {

  private static final String SIGNS = "$€£¥₹";

  private PriceField() {}

  static Money of(Field told) throws WrongFileException {
    Money price = told.as(PriceField::parse);
    if (price.amount().signum() < 0) {
      throw told.refused("it must be at least 0");
    }
    return price;
  }

  private static Money parse(String text) {
    Money price = Money.parse(text);
    if (!price.currency().chars().allMatch(PriceField::isOfCurrency)) {
      throw new IllegalArgumentException("a currency of one word such as USD is wanted behind the"
          + " amount, was \"" + price.currency() + "\"");
    }
    return price;
  }

  private static boolean isOfCurrency(int character) {
    return Character.isLetter(character) || SIGNS.indexOf(character) >= 0;
  }
}
