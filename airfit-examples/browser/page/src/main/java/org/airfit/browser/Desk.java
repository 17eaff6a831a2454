package org.airfit.browser;

import org.airfit.calls.DeskCalls;
import org.airfit.calls.RefusedException;
import org.jspecify.annotations.Nullable;
import org.teavm.jso.JSExport;
import org.teavm.jso.JSObject;

/** What the page at the desk calls: plain objects in and out. Their types stand in airfit-desk.d.ts. */
public final class Desk {

  private Desk() {}

  /**
   * Begins nothing: all is done when it is asked for.
   *
   * @param args none
   */
  public static void main(String[] args) {}

  /**
   * Tells what the air of a plant does over a day.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject day(@Nullable JSObject asked) {
    return answered("day", asked);
  }

  /**
   * Tells what is wrong in a run, by its gauges.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject diagnosis(@Nullable JSObject asked) {
    return answered("diagnosis", asked);
  }

  /**
   * Tells where water falls out, and which purity is reached.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject water(@Nullable JSObject asked) {
    return answered("water", asked);
  }

  /**
   * Tells what the leaks of a ledger cost.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject leaks(@Nullable JSObject asked) {
    return answered("leaks", asked);
  }

  /**
   * Tells which coupling profile to keep.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject inventory(@Nullable JSObject asked) {
    return answered("inventory", asked);
  }

  /**
   * Tells the faults and the gaps of a price list.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject priceList(@Nullable JSObject asked) {
    return answered("priceList", asked);
  }

  /**
   * Writes the answers of a job as pencil cards.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject cards(@Nullable JSObject asked) {
    return answered("cards", asked);
  }

  /**
   * Tells how much water falls out where compressed air is cooled.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject condensate(@Nullable JSObject asked) {
    return answered("condensate", asked);
  }

  /**
   * Tells what one leak costs.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject leak(@Nullable JSObject asked) {
    return answered("leak", asked);
  }

  private static JSObject answered(String call, @Nullable JSObject asked) {
    try {
      return Plain.toScript(DeskCalls.answerWithoutText(call, Plain.of(asked)));
    } catch (RefusedException e) {
      throw Plain.refusal(e);
    }
  }
}
