package org.airfit.measure;

/** How a caliper gets at a size; decides which of its limits of error and which allowance for technique applies. */
public enum Access {
  /** Outside jaws on a cylinder or between two faces. */
  OUTSIDE("outside"),
  /** Step faces or the depth rod, from a face to an edge. */
  STEP("step or depth"),
  /** Blade jaws in a groove. */
  GROOVE("groove"),
  /** Inside jaws or pins in a bore. */
  BORE("bore");

  private final String label;

  Access(String label) {
    this.label = label;
  }

  /** {@return the way in words, such as "step or depth"} */
  public String label() {
    return label;
  }
}
