package org.airfit.browser.probe;

import org.teavm.jso.JSExport;

/**
 * More than a hundred thousand values of quantities, parts, lines, runs, networks, ends, threads and plugs: on the JVM
 * and in JavaScript they must be the same. Rules, supplies and the choice of parts are compared by the answers to jobs,
 * at random too.
 */
public final class Probe {

  private Probe() {}

  /**
   * Begins nothing: all is done when it is asked for.
   *
   * @param args none
   */
  public static void main(String[] args) {}

  /**
   * Reckons all values.
   *
   * @return a line for each: its group, its number in it, and the value, "#" before a number and a quotation mark
   *     before a text
   */
  @JSExport
  public static String values() {
    Tape tape = new Tape();
    Shapes.tell(tape);
    Signs.tell(tape);
    Decimals.tell(tape, /* each= */ 1500);
    Expressions.tell(tape, /* each= */ 800, /* texts= */ 5);
    Functions.tell(tape, /* each= */ 1500);
    Trade.friction(tape, /* each= */ 2000);
    Trade.lines(tape, /* each= */ 300);
    Trade.parts(tape, /* each= */ 4000);
    Trade.runs(tape, /* each= */ 1500, /* workings= */ 60);
    Trade.networks(tape, /* each= */ 100);
    Trade.ends(tape);
    Trade.threads(tape, /* each= */ 400);
    Plugs.tell(tape, /* each= */ 400, /* workings= */ 60);
    Trade.drawings(tape);
    Trade.quantities(tape, /* each= */ 1500);
    return tape.toString();
  }
}
