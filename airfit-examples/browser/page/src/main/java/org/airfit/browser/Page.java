package org.airfit.browser;

import java.util.LinkedHashMap;
import java.util.Map;
import org.airfit.calls.CounterCalls;
import org.airfit.calls.RefusedException;
import org.airfit.jobsheet.OnScreen;
import org.jspecify.annotations.Nullable;
import org.teavm.jso.JSExport;
import org.teavm.jso.JSObject;

/** What JavaScript calls: plain objects in and out. Their types stand in airfit.d.ts. */
public final class Page {

  private Page() {}

  /**
   * Begins nothing: all is done when it is asked for.
   *
   * @param args none
   */
  public static void main(String[] args) {}

  /**
   * Tells what the plug at hand is.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject identify(@Nullable JSObject asked) {
    return answered("identify", Plain.of(asked));
  }

  /**
   * Tells whether two ends go together.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject willItGo(@Nullable JSObject asked) {
    return answered("willItGo", Plain.of(asked));
  }

  /**
   * Tells what arrives at the end of a run.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject run(@Nullable JSObject asked) {
    return answered("run", Plain.of(asked));
  }

  /**
   * Chooses the parts for a job.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject select(@Nullable JSObject asked) {
    return answered("select", Plain.of(asked));
  }

  /**
   * Tells what a reference set is worth, and writes it as a file.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject referenceSet(@Nullable JSObject asked) {
    return answered("referenceSet", Plain.of(asked));
  }

  /**
   * Draws the outline of a plug, true to size.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject outline(@Nullable JSObject asked) {
    return answered("outline", Plain.of(asked));
  }

  /**
   * Tells what a stock file holds.
   *
   * @param asked a plain object
   * @return a plain object
   */
  @JSExport
  public static JSObject stock(@Nullable JSObject asked) {
    return answered("stock", Plain.of(asked));
  }

  /**
   * Answers a job file.
   *
   * @param name the name of the job file
   * @param files texts of files by name: that of the job and those it names
   * @param options the name of a letterhead file among the files, and today's date; both may be left out
   * @return the sheet as text, as a page to hand over, and what it rests on as a page
   */
  @JSExport
  public static JSObject sheet(
      @Nullable JSObject name, @Nullable JSObject files, @Nullable JSObject options) {
    Map<String, @Nullable Object> asked = new LinkedHashMap<>();
    if (Plain.of(options) instanceof Map<?, ?> map) {
      map.forEach((option, value) -> asked.put(String.valueOf(option), value));
    }
    asked.put("job", Plain.of(name));
    asked.put("files", Plain.of(files));
    return answered("sheet", asked);
  }

  /**
   * Draws where the caliper goes.
   *
   * @param size the size it goes to; none for all of them
   * @return the drawing, and what is to be known of the size
   */
  @JSExport
  public static JSObject measuring(@Nullable JSObject size) {
    Map<String, @Nullable Object> asked = new LinkedHashMap<>();
    asked.put("size", Plain.of(size));
    return answered("measuring", asked);
  }

  /**
   * Tells the words that fields accept.
   *
   * @return a plain object
   */
  @JSExport
  public static JSObject choices() {
    return answered("choices", Map.of());
  }

  /**
   * Writes a job as the text of a job file.
   *
   * @param fields the fields of the job
   * @return the text
   */
  @JSExport
  public static String jobFile(@Nullable JSObject fields) {
    Map<String, @Nullable Object> asked = new LinkedHashMap<>();
    asked.put("job", Plain.of(fields));
    try {
      return String.valueOf(CounterCalls.answer("jobFile", asked).get("text"));
    } catch (RefusedException e) {
      throw Plain.refusal(e);
    }
  }

  /**
   * Obtains the style of charts.
   *
   * @return CSS
   */
  @JSExport
  public static String pictureStyle() {
    return OnScreen.chartStyle();
  }

  private static JSObject answered(String call, @Nullable Object asked) {
    try {
      return Plain.toScript(CounterCalls.answer(call, asked));
    } catch (RefusedException e) {
      throw Plain.refusal(e);
    }
  }
}
