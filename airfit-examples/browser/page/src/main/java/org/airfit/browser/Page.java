package org.airfit.browser;

import java.util.LinkedHashMap;
import java.util.Map;
import org.airfit.files.WrongFileException;
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
   * Answers a job file.
   *
   * @param name the name of the job file
   * @param files texts of files by name: that of the job and those it names
   * @return the sheet as text, as a page to hand over, and what it rests on as a page
   */
  @JSExport
  public static JSObject sheet(String name, JSObject files) {
    try {
      return Plain.toScript(Calls.sheet(name, new Given(texts(files), Plain::parsed)));
    } catch (WrongFileException e) {
      throw Plain.refusal("WrongFile", String.valueOf(e.getMessage()));
    }
  }

  private static Map<String, String> texts(JSObject files) {
    Map<String, String> texts = new LinkedHashMap<>();
    if (Plain.of(files) instanceof Map<?, ?> map) {
      map.forEach((name, text) -> texts.put(String.valueOf(name), String.valueOf(text)));
    }
    return texts;
  }
}
