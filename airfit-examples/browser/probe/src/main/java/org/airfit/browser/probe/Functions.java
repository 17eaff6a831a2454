package org.airfit.browser.probe;

/** The functions of analysis that the library uses. */
final class Functions {

  private Functions() {}

  static void tell(Tape tape, int each) {
    Draw draw = new Draw(2);
    tape.group("function");
    for (int i = 0; i < each; i++) {
      double any = draw.between(-40.0, 40.0);
      double positive = draw.over(1.0e-12, 1.0e12);
      double small = draw.over(1.0e-16, 0.5);
      tape.number(Math.log1p(small));
      tape.number(Math.expm1(small));
      tape.number(Math.cbrt(any));
      tape.number(Math.log10(positive));
      tape.number(Math.hypot(any, positive));
      tape.number(Math.rint(any * 2.0) / 2.0);
      tape.number((double) Math.round(any * 2.0));
      tape.number(Math.ulp(positive));
      tape.number(Math.toRadians(any));
      tape.number(Math.toDegrees(any));
      tape.number(Math.exp(any));
      tape.number(Math.log(positive));
      tape.number(Math.pow(positive, small));
      tape.number(Math.sqrt(positive));
      tape.number(Math.sin(any));
      tape.number(Math.cos(any));
      tape.number(Math.tan(small));
      tape.number(Math.atan(any));
      tape.number(Math.scalb(any, (int) any));
      tape.number(Math.nextUp(any));
      tape.number(Math.copySign(positive, any));
      tape.number(Math.getExponent(positive));
      tape.number(Math.floor(any));
      tape.number(Math.ceil(any));
      tape.number(Math.signum(any));
      tape.number(Math.abs(any));
      tape.number(Math.min(any, small));
      tape.number(Math.max(any, small));
    }
  }
}
