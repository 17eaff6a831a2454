package org.airfit.joint;

import org.airfit.thread.Gender;
import org.airfit.thread.NamedThread;

/** How a thread with a form beside it is written; {@link FormReader} reads it back. */
final class FormText {

  private FormText() {}

  static String label(NamedThread thread, SealForm form) {
    String name = ThreadNames.of(thread);
    String gendered = name + " " + thread.gender().label();
    boolean small = ThreadNames.isSmall(thread);
    return switch (form) {
      case FLARE_37, FLARE_45, INVERTED_FLARE, CONE_24 -> form.label() + " " + gendered;
      case O_RING ->
        thread.gender() == Gender.FEMALE ? name + " O-ring port" : gendered + " with O-ring";
      case FLAT_FACE ->
        small ? gendered : name.startsWith("G") ? name + " port" : name + " flat-face port";
      case WASHER -> small ? gendered : gendered + " with washer";
      case RING -> gendered + " with ring";
      case WATER -> gendered;
    };
  }
}
