package org.airfit.joint;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadFamily;

/** The shapes of {@link AdapterShape} in all sizes, and at which thread size an end stands among them. */
final class StandardShapes {

  /** A piece: its shape and its two ends. */
  record Piece(AdapterShape shape, End one, End other) {}

  /** How many sizes one piece reduces within a family. */
  private static final int REDUCES = 4;

  /** How many sizes an adapter between two families reduces. */
  private static final int REDUCES_BETWEEN_FAMILIES = 1;

  /** How many sizes the thread of a hose tail or push-in connector differs from the size nearest to hose or tube. */
  private static final int REDUCES_FROM_HOSE = 2;

  /** The families with couplings, nipples, bushings and reducers of their own. */
  private static final List<ThreadFamily> FAMILIES =
      List.of(ThreadFamily.NPT, ThreadFamily.NPTF, ThreadFamily.BSPT, ThreadFamily.BSPP);

  /** Metric ports and the pipe thread that passes about as much. A choice of this project. */
  private static final Map<String, NominalThreadSize> METRIC_PORTS = metricPorts();

  private static final double[] TUBES_INCHES = {0.125, 0.15625, 0.1875, 0.25, 0.3125, 0.375, 0.5};
  private static final double[] TUBES_MILLIMETRES = {3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0};

  /** The number in the name of each size [in]. */
  private static final Map<NominalThreadSize, Double> NUMBERS = numbers();

  private StandardShapes() {}

  private static Map<NominalThreadSize, Double> numbers() {
    Map<NominalThreadSize, Double> numbers = new EnumMap<>(NominalThreadSize.class);
    for (NominalThreadSize size : NominalThreadSize.values()) {
      numbers.put(size, Length.parse(size.label() + " in").inches());
    }
    return numbers;
  }

  private static Map<String, NominalThreadSize> metricPorts() {
    Map<String, NominalThreadSize> ports = new LinkedHashMap<>();
    ports.put("M10x1", NominalThreadSize.ONE_EIGHTH);
    ports.put("M12x1.5", NominalThreadSize.ONE_QUARTER);
    ports.put("M14x1.5", NominalThreadSize.ONE_QUARTER);
    ports.put("M16x1.5", NominalThreadSize.THREE_EIGHTHS);
    ports.put("M18x1.5", NominalThreadSize.THREE_EIGHTHS);
    ports.put("M22x1.5", NominalThreadSize.ONE_HALF);
    ports.put("M27x2", NominalThreadSize.THREE_QUARTERS);
    ports.put("M33x2", NominalThreadSize.ONE);
    return ports;
  }

  /** Makes them all, always in the same order. */
  static List<Piece> make() {
    List<Piece> all = new ArrayList<>();
    FAMILIES.forEach(family -> ofOneFamily(all, family));
    for (ThreadFamily american : List.of(ThreadFamily.NPT, ThreadFamily.NPTF)) {
      for (ThreadFamily british : List.of(ThreadFamily.BSPT, ThreadFamily.BSPP)) {
        betweenFamilies(all, american, british);
      }
    }
    betweenFamilies(all, ThreadFamily.BSPT, ThreadFamily.BSPP);
    swivels(all);
    hoses(all);
    tubes(all);
    flares(all);
    ports(all);
    small(all);
    claws(all);
    return all;
  }

  /** Flares of 37° and 45° with pipe threads, outside and as swivel nut, and unions of each. */
  private static void flares(List<Piece> all) {
    for (SealForm form : List.of(SealForm.FLARE_37, SealForm.FLARE_45)) {
      for (TubeThread row : TubeThread.all(form)) {
        End nose = new End.Formed(foreign(row.thread(), Gender.MALE), form, false);
        End nut = new End.Formed(foreign(row.thread(), Gender.FEMALE), form, true);
        all.add(new Piece(AdapterShape.FLARE_UNION, nose, nose));
        all.add(new Piece(AdapterShape.SWIVEL_UNION, nut, nut));
        List<ThreadFamily> families = form == SealForm.FLARE_37
            ? List.of(ThreadFamily.NPT, ThreadFamily.BSPP)
            : List.of(ThreadFamily.NPT);
        for (ThreadFamily family : families) {
          for (End pipe : pipes(family, nearest(tube(row)), REDUCES_BETWEEN_FAMILIES)) {
            all.add(new Piece(AdapterShape.FLARE_ADAPTER, nose, pipe));
            all.add(new Piece(AdapterShape.SWIVEL_ADAPTER, nut, pipe));
          }
        }
      }
    }
  }

  /** Studs with O-ring: unified ones with NPT inside or a flare of 37°, metric ones with NPT or G inside. */
  private static void ports(List<Piece> all) {
    for (TubeThread row : TubeThread.all(SealForm.O_RING)) {
      End stud = new End.Formed(foreign(row.thread(), Gender.MALE), SealForm.O_RING, false);
      TubeThread.ofDash(SealForm.FLARE_37, row.dash())
          .map(flare -> foreign(flare.thread(), Gender.MALE))
          .ifPresent(nose -> all.add(new Piece(
              AdapterShape.PORT_ADAPTER, stud, new End.Formed(nose, SealForm.FLARE_37, false))));
      TubeThread.ofDash(SealForm.FLARE_37, row.dash())
          .map(flare -> foreign(flare.thread(), Gender.FEMALE))
          .ifPresent(nut -> all.add(new Piece(
              AdapterShape.PORT_ADAPTER, stud, new End.Formed(nut, SealForm.FLARE_37, true))));
      inside(all, stud, ThreadFamily.NPT, nearest(tube(row)));
    }
    METRIC_PORTS.forEach((thread, size) -> {
      End stud = new End.Formed(foreign(thread, Gender.MALE), SealForm.O_RING, false);
      inside(all, stud, ThreadFamily.NPT, size);
      inside(all, stud, ThreadFamily.BSPP, size);
    });
  }

  private static void inside(
      List<Piece> all, End stud, ThreadFamily family, NominalThreadSize middle) {
    for (End pipe : pipes(family, middle, REDUCES_BETWEEN_FAMILIES)) {
      if (pipe instanceof End.Threaded thread && thread.gender() == Gender.FEMALE) {
        all.add(new Piece(AdapterShape.PORT_ADAPTER, stud, pipe));
      }
    }
  }

  /** M5 and 10-32 with the smallest tubes, hose and pipe threads. */
  private static void small(List<Piece> all) {
    small(all, "M5");
    small(all, "10-32");
  }

  private static void small(List<Piece> all, String thread) {
    End stud = new End.Formed(foreign(thread, Gender.MALE), SealForm.WASHER, false);
    End face = new End.Formed(foreign(thread, Gender.FEMALE), SealForm.FLAT_FACE, false);
    for (String tube : List.of("1/8 in", "5/32 in", "1/4 in", "3 mm", "4 mm", "6 mm")) {
      all.add(new Piece(AdapterShape.PUSH_IN_CONNECTOR, new End.PushIn(Length.parse(tube)), stud));
    }
    all.add(new Piece(AdapterShape.HOSE_TAIL, new End.Barb(HoseBore.parse("4 mm")), stud));
    for (ThreadFamily family : List.of(ThreadFamily.NPT, ThreadFamily.BSPT, ThreadFamily.BSPP)) {
      all.add(new Piece(AdapterShape.ADAPTER, male(family, NominalThreadSize.ONE_EIGHTH), face));
      all.add(new Piece(AdapterShape.ADAPTER, stud, female(family, NominalThreadSize.ONE_EIGHTH)));
    }
  }

  /**
   * Claws with barbs for hose of 10 to 25 mm, European ones with G 1/4 to 1-1/4, two-lug ones with NPT 1/4 to 1;
   * four-lug ones with barbs for hose of 1-1/4 to 2 in, and NPT of these sizes.
   */
  private static void claws(List<Piece> all) {
    Hoses small = new Hoses(9.5, 25.4);
    claws(
        all,
        ClawHead.EUROPEAN,
        small,
        ThreadFamily.BSPP,
        NominalThreadSize.ONE_QUARTER,
        NominalThreadSize.ONE_AND_A_QUARTER);
    claws(
        all,
        ClawHead.TWO_LUG,
        small,
        ThreadFamily.NPT,
        NominalThreadSize.ONE_QUARTER,
        NominalThreadSize.ONE);
    claws(
        all,
        ClawHead.FOUR_LUG,
        new Hoses(31.5, 51.0),
        ThreadFamily.NPT,
        NominalThreadSize.ONE_AND_A_QUARTER,
        NominalThreadSize.TWO);
  }

  /** Between which bores hoses lie [mm]. */
  private record Hoses(double least, double most) {

    boolean have(HoseBore bore) {
      double named = bore.nominal().millimetres();
      return named >= least && named <= most;
    }
  }

  private static void claws(
      List<Piece> all,
      ClawHead head,
      Hoses hoses,
      ThreadFamily family,
      NominalThreadSize smallest,
      NominalThreadSize largest) {
    End claw = new End.Claw(head);
    List<HoseBore> widestFirst = hoseNames();
    widestFirst.sort(Comparator.reverseOrder());
    for (HoseBore bore : widestFirst) {
      if (hoses.have(bore)) {
        all.add(new Piece(AdapterShape.CLAW_TAIL, claw, new End.Barb(bore)));
      }
    }
    for (NominalThreadSize size : family.sizes()) {
      if (size.compareTo(smallest) >= 0 && size.compareTo(largest) <= 0) {
        all.add(new Piece(AdapterShape.CLAW_THREAD, claw, male(family, size)));
        all.add(new Piece(AdapterShape.CLAW_THREAD, claw, female(family, size)));
      }
    }
  }

  private static Length tube(TubeThread row) {
    return Length.parse(row.tube() + " in");
  }

  private static ForeignThread foreign(String name, Gender gender) {
    return ForeignThread.find(name, gender).orElseThrow();
  }

  /** Both genders of a family in the sizes about one. */
  private static List<End> pipes(ThreadFamily family, NominalThreadSize middle, int steps) {
    List<End> ends = new ArrayList<>();
    for (NominalThreadSize size : family.sizes()) {
      if (size.stepsTo(middle) <= steps) {
        ends.add(male(family, size));
        ends.add(female(family, size));
      }
    }
    return ends;
  }

  private static boolean isReducible(NominalThreadSize large, NominalThreadSize small) {
    return large.compareTo(small) > 0 && large.stepsTo(small) <= REDUCES;
  }

  private static void ofOneFamily(List<Piece> all, ThreadFamily family) {
    for (NominalThreadSize large : family.sizes()) {
      all.add(new Piece(AdapterShape.NIPPLE, male(family, large), male(family, large)));
      all.add(
          new Piece(AdapterShape.FEMALE_COUPLING, female(family, large), female(family, large)));
      for (NominalThreadSize small : family.sizes()) {
        if (isReducible(large, small)) {
          all.add(
              new Piece(AdapterShape.REDUCING_NIPPLE, male(family, large), male(family, small)));
          all.add(new Piece(
              AdapterShape.REDUCING_COUPLING, female(family, large), female(family, small)));
          all.add(new Piece(AdapterShape.BUSHING, male(family, large), female(family, small)));
          all.add(new Piece(AdapterShape.REDUCER, female(family, large), male(family, small)));
        }
      }
    }
  }

  private static void betweenFamilies(List<Piece> all, ThreadFamily one, ThreadFamily other) {
    for (NominalThreadSize size : one.sizes()) {
      for (NominalThreadSize second : other.sizes()) {
        if (size.stepsTo(second) <= REDUCES_BETWEEN_FAMILIES) {
          End male = male(one, size);
          End female = female(one, size);
          End farMale = male(other, second);
          End farFemale = female(other, second);
          all.add(new Piece(AdapterShape.ADAPTER_NIPPLE, male, farMale));
          all.add(new Piece(AdapterShape.ADAPTER_COUPLING, female, farFemale));
          all.add(new Piece(AdapterShape.ADAPTER, male, farFemale));
          all.add(new Piece(AdapterShape.ADAPTER, female, farMale));
        }
      }
    }
  }

  /** NPSM inside only: outside, NPT goes into it. */
  private static void swivels(List<Piece> all) {
    for (NominalThreadSize size : ThreadFamily.NPSM.sizes()) {
      End swivel = female(ThreadFamily.NPSM, size);
      all.add(new Piece(AdapterShape.FEMALE_COUPLING, swivel, swivel));
      for (NominalThreadSize second : ThreadFamily.NPT.sizes()) {
        if (ThreadFamily.NPSM.sizes().contains(second) && isReducible(size, second)) {
          all.add(
              new Piece(AdapterShape.REDUCING_COUPLING, swivel, female(ThreadFamily.NPSM, second)));
        }
        if (size.stepsTo(second) <= REDUCES_BETWEEN_FAMILIES) {
          for (Gender gender : Gender.values()) {
            all.add(new Piece(
                AdapterShape.SWIVEL_ADAPTER,
                swivel,
                new End.Threaded(ThreadFamily.NPT, second, gender)));
          }
        }
      }
    }
  }

  private static void hoses(List<Piece> all) {
    List<HoseBore> bores = hoseNames();
    for (HoseBore bore : bores) {
      End barb = new End.Barb(bore);
      withThreads(all, AdapterShape.HOSE_TAIL, barb, bore.nominal());
      all.add(new Piece(AdapterShape.HOSE_LENGTH, new End.HoseEnd(bore), new End.HoseEnd(bore)));
      all.add(new Piece(AdapterShape.HOSE_JOINER, barb, barb));
      for (HoseBore small : bores) {
        int steps = nearest(bore.nominal()).stepsTo(nearest(small.nominal()));
        boolean one = StandardHose.of(bore).equals(StandardHose.of(small));
        if (!one && small.compareTo(bore) < 0 && steps <= REDUCES_FROM_HOSE) {
          all.add(new Piece(AdapterShape.REDUCING_HOSE_JOINER, barb, new End.Barb(small)));
        }
      }
    }
  }

  private static List<HoseBore> hoseNames() {
    List<HoseBore> bores = new ArrayList<>();
    for (StandardHose hose : StandardHose.all()) {
      hose.tradeName().ifPresent(bores::add);
      bores.add(hose.nominal());
    }
    return bores;
  }

  private static void tubes(List<Piece> all) {
    List<Length> tubes = new ArrayList<>();
    for (double inches : TUBES_INCHES) {
      tubes.add(Length.ofInches(inches));
    }
    for (double millimetres : TUBES_MILLIMETRES) {
      tubes.add(Length.ofMillimetres(millimetres));
    }
    for (Length tube : tubes) {
      End grip = new End.PushIn(tube);
      withThreads(all, AdapterShape.PUSH_IN_CONNECTOR, grip, tube);
      all.add(new Piece(AdapterShape.TUBE_LENGTH, new End.TubeEnd(tube), new End.TubeEnd(tube)));
      all.add(new Piece(AdapterShape.PUSH_IN_UNION, grip, grip));
      for (Length small : tubes) {
        if (small.compareTo(tube) < 0 && tube.compareTo(small.times(2.0)) <= 0) {
          all.add(new Piece(AdapterShape.REDUCING_PUSH_IN_UNION, grip, new End.PushIn(small)));
        }
      }
    }
  }

  /** Every family with both genders, in the sizes about that of a hose or tube. */
  private static void withThreads(List<Piece> all, AdapterShape shape, End near, Length diameter) {
    for (ThreadFamily family : FAMILIES) {
      for (End pipe : pipes(family, nearest(diameter), REDUCES_FROM_HOSE)) {
        all.add(new Piece(shape, near, pipe));
      }
    }
  }

  /**
   * The size whose number is nearest to a diameter, the smaller of two as near; a name only, here to put hoses and
   * tubes beside threads.
   */
  private static NominalThreadSize nearest(Length diameter) {
    return NUMBERS.entrySet().stream()
        .min(Comparator.comparingLong(
            size -> Math.round(Math.abs(size.getValue() - diameter.inches()) * 1.0e6)))
        .orElseThrow()
        .getKey();
  }

  /** The size of an end; a hose or tube stands at the thread size nearest to its diameter, a flare at its tube's. */
  static NominalThreadSize size(End end) {
    if (end instanceof End.Threaded threaded) {
      return threaded.size();
    }
    if (end instanceof End.Barb barb) {
      return nearest(barb.bore().nominal());
    }
    if (end instanceof End.HoseEnd hose) {
      return nearest(hose.bore().nominal());
    }
    if (end instanceof End.Formed formed) {
      return size(formed);
    }
    return nearest(end instanceof End.PushIn grip ? grip.outside() : ((End.TubeEnd) end).outside());
  }

  private static NominalThreadSize size(End.Formed formed) {
    if (formed.thread() instanceof ThreadDesignation pipe) {
      return pipe.size();
    }
    String name = ThreadNames.of(formed.thread());
    return TubeThread.ofThread(formed.form(), name)
        .map(row -> nearest(tube(row)))
        .orElseGet(() -> METRIC_PORTS.getOrDefault(name, NominalThreadSize.ONE_EIGHTH));
  }

  private static End male(ThreadFamily family, NominalThreadSize size) {
    return new End.Threaded(family, size, Gender.MALE);
  }

  private static End female(ThreadFamily family, NominalThreadSize size) {
    return new End.Threaded(family, size, Gender.FEMALE);
  }
}
