package org.airfit.joint;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.thread.ForeignStandard;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NamedThread;
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadFamily;
import org.jspecify.annotations.Nullable;

/** Which thread can have which form beside it. */
final class FormRules {

  /** Threads of ports with O-ring as ISO 6149 lists them on a trade page; M20x1.5 is from memory. */
  private static final List<String> METRIC_PORTS = List.of(
      "M8x1", "M10x1", "M12x1.5", "M14x1.5", "M16x1.5", "M18x1.5", "M20x1.5", "M22x1.5", "M27x2",
      "M33x2");

  private FormRules() {}

  /** Refuses a thread on which a form is not made. */
  static void require(NamedThread thread, SealForm form) {
    problem(thread, form).ifPresent(problem -> {
      throw new IllegalArgumentException(problem);
    });
  }

  /** Why a thread does not have a form; empty where it may. */
  static Optional<String> problem(NamedThread thread, SealForm form) {
    String name = ThreadNames.of(thread);
    if (form == SealForm.FLAT_FACE && thread.gender() != Gender.FEMALE) {
      return Optional.of("gender of a thread in a flat face must be female, was male");
    }
    if ((form == SealForm.WASHER || form == SealForm.RING) && thread.gender() != Gender.MALE) {
      return Optional.of(
          "gender of a thread with its own " + form.label() + " must be male, was female");
    }
    if (mayHave(thread, form)) {
      return Optional.empty();
    }
    return Optional.of("thread of the form " + form.label() + " must be "
        + switch (form) {
          case FLARE_37, FLARE_45, INVERTED_FLARE, O_RING -> "one of " + listed(form);
          case CONE_24 -> "metric";
          case FLAT_FACE, WASHER, RING -> "metric, G or 10-32";
          case WATER -> "a hose thread";
        }
        + ", was " + name);
  }

  private static String listed(SealForm form) {
    Stream<String> unified = TubeThread.all(form).stream().map(TubeThread::thread);
    return Stream.concat(unified, form == SealForm.O_RING ? METRIC_PORTS.stream() : Stream.empty())
        .collect(Collectors.joining(", "));
  }

  private static boolean mayHave(NamedThread thread, SealForm form) {
    boolean isG = thread instanceof ThreadDesignation pipe && pipe.family() == ThreadFamily.BSPP;
    @Nullable
    ForeignStandard standard = thread instanceof ForeignThread foreign ? foreign.standard() : null;
    return switch (form) {
      case FLARE_37, FLARE_45, INVERTED_FLARE ->
        TubeThread.ofThread(form, ThreadNames.of(thread)).isPresent();
      case O_RING ->
        TubeThread.ofThread(form, ThreadNames.of(thread)).isPresent()
            || METRIC_PORTS.contains(ThreadNames.of(thread));
      case CONE_24 -> standard == ForeignStandard.METRIC;
      case FLAT_FACE, WASHER, RING ->
        isG || standard == ForeignStandard.METRIC || ThreadNames.isSmall(thread);
      case WATER -> standard == ForeignStandard.HOSE;
    };
  }

  /** The forms that a thread can have, in the order of the forms. */
  static List<SealForm> of(NamedThread thread) {
    return List.of(SealForm.values()).stream()
        .filter(form -> problem(thread, form).isEmpty())
        .toList();
  }
}
