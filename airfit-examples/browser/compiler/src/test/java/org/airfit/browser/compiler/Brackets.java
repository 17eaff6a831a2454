package org.airfit.browser.compiler;

/** Sums, products, quotients and remainders with brackets, for the compiler: none of these may be dropped. */
public final class Brackets {

  /** Where the results go, so that nothing is left out as unused. */
  static double kept;

  private Brackets() {}

  static double sumOfSum(double a, double b, double c) {
    return a + (b + c);
  }

  static double sumOfDifference(double a, double b, double c) {
    return a + (b - c);
  }

  static double differenceOfSum(double a, double b, double c) {
    return a - (b + c);
  }

  static double differenceOfDifference(double a, double b, double c) {
    return a - (b - c);
  }

  static double productOfProduct(double a, double b, double c) {
    return a * (b * c);
  }

  static double productOfQuotient(double a, double b, double c) {
    return a * (b / c);
  }

  static double quotientOfProduct(double a, double b, double c) {
    return a / (b * c);
  }

  static double quotientOfQuotient(double a, double b, double c) {
    return a / (b / c);
  }

  static double remainderOfProduct(double a, double b, double c) {
    return a % (b * c);
  }

  static double remainderOfQuotient(double a, double b, double c) {
    return a % (b / c);
  }

  static double productOfRemainder(double a, double b, double c) {
    return a * (b % c);
  }

  static double quotientOfRemainder(double a, double b, double c) {
    return a / (b % c);
  }

  static double remainderOfRemainder(double a, double b, double c) {
    return a % (b % c);
  }

  /**
   * Calls all of them, with values that the compiler cannot know.
   *
   * @param args as many as one likes
   */
  public static void main(String[] args) {
    double a = args.length + 0.1;
    double b = args.length + 0.7;
    double c = args.length - 3.3;
    kept += sumOfSum(a, b, c) + sumOfDifference(b, a, c);
    kept += differenceOfSum(a, b, c) + differenceOfDifference(b, a, c);
    kept += productOfProduct(a, b, c) + productOfQuotient(b, a, c);
    kept += quotientOfProduct(a, b, c) + quotientOfQuotient(b, a, c);
    kept += remainderOfProduct(a, b, c) + remainderOfQuotient(b, a, c);
    kept += productOfRemainder(a, b, c) + quotientOfRemainder(b, a, c);
    kept += remainderOfRemainder(a, b, c);
  }
}
