package org.airfit.joint;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.thread.Gender;
import org.airfit.thread.PipeThread;
import org.airfit.thread.ThreadFamily;
import org.airfit.working.UnitSystem;

/** What the standards, or the geometry, say of two threads. */
final class ThreadPairs {

  private record Key(ThreadFamily male, ThreadFamily female) {}

  private static final Source B1201 = Source.standard("ASME B1.20.1-2013 section 3.1");
  private static final Source B1203 =
      Source.standard("ASME B1.20.3-1976 (R2018) sections 1.4 and 7.4");
  private static final Source ISO7 = Source.standard("ISO 7-1, as quoted in other documents");

  private static final Map<Key, Pairing> OF_ONE_FORM = Map.ofEntries(
      Map.entry(
          new Key(ThreadFamily.NPT, ThreadFamily.NPT),
          new Pairing(
              MatingVerdict.SEALS_WITH_SEALANT,
              "Taper in taper of one standard, made up wrench tight with a sealant.",
              B1201)),
      Map.entry(
          new Key(ThreadFamily.NPT, ThreadFamily.NPSC),
          new Pairing(
              MatingVerdict.SEALS_WITH_SEALANT,
              "A straight coupling takes the taper thread, with a lubricant or sealer, for low pressure.",
              Source.standard(
                  "ASME B1.20.1-2013 section 4; Machinery's Handbook, 27th ed., page 1864"))),
      Map.entry(
          new Key(ThreadFamily.NPT, ThreadFamily.NPSM),
          new Pairing(
              MatingVerdict.SEALS_ON_FACE,
              "A free-fitting thread only holds the parts together: a cone seat or washer outside the thread must seal, and both parts "
                  + "must have it.",
              Source.standard("ASME B1.20.1, table of NPSM; trade articles on its seats"))),
      Map.entry(
          new Key(ThreadFamily.NPSM, ThreadFamily.NPSM),
          new Pairing(
              MatingVerdict.SEALS_ON_FACE,
              "A free-fitting mechanical joint: a washer, ring or cone seat must seal.",
              Source.standard("ASME B1.20.1, table of NPSM"))),
      Map.entry(
          new Key(ThreadFamily.NPTF, ThreadFamily.NPTF),
          new Pairing(
              MatingVerdict.SEALS_DRY,
              "A dryseal pair: crests and roots meet before or with the flanks.",
              B1203)),
      Map.entry(
          new Key(ThreadFamily.NPT, ThreadFamily.NPTF),
          new Pairing(
              MatingVerdict.SEALS_WITH_SEALANT,
              "They go together, but only a pair of dryseal threads seals dry: use a sealant.",
              Source.handbook("articles comparing NPT and NPTF"))),
      Map.entry(
          new Key(ThreadFamily.NPTF, ThreadFamily.NPT),
          new Pairing(
              MatingVerdict.SEALS_WITH_SEALANT,
              "They go together, but only a pair of dryseal threads seals dry: use a sealant.",
              Source.handbook("articles comparing NPT and NPTF"))),
      Map.entry(
          new Key(ThreadFamily.NPTF, ThreadFamily.PTF_SAE_SHORT),
          new Pairing(
              MatingVerdict.SEALS_DRY,
              "A dryseal pair: the short female thread is made for the full male one. It has a thread less to "
                  + "seal on than two full ones.",
              B1203)),
      Map.entry(
          new Key(ThreadFamily.NPTF, ThreadFamily.NPSF),
          new Pairing(
              MatingVerdict.SEALS_DRY,
              "A dryseal straight female thread takes it and seals over few threads, if it is of soft or ductile "
                  + "material.",
              Source.fromMemory("ASME B1.20.3-1976 section 1.4"))),
      Map.entry(
          new Key(ThreadFamily.NPTF, ThreadFamily.NPSI),
          new Pairing(
              MatingVerdict.SEALS_DRY,
              "The straight female thread is made for the short male one and takes the full one too; it seals over few "
                  + "threads.",
              Source.fromMemory("ASME B1.20.3-1976 section 1.4 and its table of assemblies"))),
      Map.entry(
          new Key(ThreadFamily.PTF_SAE_SHORT, ThreadFamily.NPSI),
          new Pairing(
              MatingVerdict.SEALS_DRY,
              "The female thread is made for the short male one, and seals over few threads.",
              B1203)),
      Map.entry(
          new Key(ThreadFamily.PTF_SAE_SHORT, ThreadFamily.NPTF),
          new Pairing(
              MatingVerdict.SEALS_DRY,
              "A dryseal pair: the standard lets the short male thread go into the full female one, with a thread less "
                  + "to seal on.",
              B1203)),
      Map.entry(
          new Key(ThreadFamily.PTF_SAE_SHORT, ThreadFamily.PTF_SAE_SHORT),
          new Pairing(
              MatingVerdict.DOES_NOT_FIT,
              "The standard says that the two short threads are not designed for each other: at the limits they may "
                  + "not assemble.",
              B1203)),
      Map.entry(
          new Key(ThreadFamily.PTF_SAE_SHORT, ThreadFamily.NPSF),
          new Pairing(
              MatingVerdict.DOES_NOT_FIT,
              "The standard says that the short male thread is not designed for this straight female one: at the "
                  + "limits they may not assemble.",
              B1203)),
      Map.entry(
          new Key(ThreadFamily.BSPT, ThreadFamily.BSPT),
          new Pairing(
              MatingVerdict.SEALS_WITH_SEALANT,
              "Taper in taper of one standard, with a jointing medium.",
              ISO7)),
      Map.entry(
          new Key(ThreadFamily.BSPT, ThreadFamily.RP),
          new Pairing(
              MatingVerdict.SEALS_WITH_SEALANT,
              "Taper in parallel of one standard, with a jointing medium.",
              ISO7)),
      Map.entry(
          new Key(ThreadFamily.BSPT, ThreadFamily.BSPP),
          new Pairing(
              MatingVerdict.NOT_TO_BE_RELIED_ON,
              "R in G is refused: by ISO 228-1 a G thread does not seal on the thread, a taper male stops on its "
                  + "flanks before a face can press on a washer, and ISO 7-1 pairs R with Rc or Rp only.",
              Source.standard(
                  "scopes of ISO 7-1 and ISO 228-1; documents differ: GOST 6357-81 allows the pair, the"
                      + " foreword of GB/T 7307-2001 advises against it"))),
      Map.entry(
          new Key(ThreadFamily.BSPP, ThreadFamily.BSPP),
          new Pairing(
              MatingVerdict.SEALS_ON_FACE,
              "The thread only holds the parts together: a washer, bonded seal or ring on a face must seal.",
              ThreadFamily.BSPP.source())),
      Map.entry(
          new Key(ThreadFamily.BSPP, ThreadFamily.RP),
          new Pairing(
              MatingVerdict.NOT_TO_BE_RELIED_ON,
              "G in Rp is refused: by ISO 7-1 a parallel male thread makes no joint on the thread, and it may bind, "
                  + "because Rp may be smaller than basic and the male G at basic size.",
              Source.standard(
                  "ISO 7-1:1994, scope; tolerances of ISO 7-1 (Rp either way) and ISO 228-1 (G male"
                      + " downward)"))),
      Map.entry(
          new Key(ThreadFamily.BSPP, ThreadFamily.BSPT),
          new Pairing(
              MatingVerdict.NOT_TO_BE_RELIED_ON,
              "Parallel in taper meets in one plane only and is a pair of no standard.",
              Source.derived("geometry; ISO 228-1:2000, introduction"))));

  private static final Pairing OF_NO_STANDARD = new Pairing(
      MatingVerdict.NOT_TO_BE_RELIED_ON,
      "The flanks are alike, but it is a pair of no standard: nobody vouches for how far it goes or that it seals.",
      Source.derived("pairs named in ASME B1.20.1, ASME B1.20.3 and ISO 7-1"));

  private static final Pairing TABLE_NOT_SEEN = new Pairing(
      MatingVerdict.NOT_JUDGED,
      "The flanks are alike, but the limits of dryseal threads (ASME B1.20.3) were not seen, and what was read of the "
          + "standard does not name this pair. Ask the maker of one of the parts.",
      Source.derived("pairs named in the parts of ASME B1.20.3 that were read"));

  /** The families of ASME B1.20.3, of which no table was seen. */
  private static final Set<ThreadFamily> DRYSEAL =
      Set.of(ThreadFamily.NPTF, ThreadFamily.PTF_SAE_SHORT, ThreadFamily.NPSF, ThreadFamily.NPSI);

  private ThreadPairs() {}

  /** Judges two threads, in either order. */
  static Pairing of(End.Threaded one, End.Threaded other) {
    if (one.gender() == other.gender()) {
      return new Pairing(
          MatingVerdict.DOES_NOT_FIT,
          "Both are " + one.gender().label() + ".",
          one.family().source());
    }
    End.Threaded male = one.gender() == Gender.MALE ? one : other;
    End.Threaded female = one.gender() == Gender.MALE ? other : one;
    if (male.size() != female.size()) {
      return sizesDiffer(male, female);
    }
    return isOfOneForm(male, female)
        ? ofOneForm(male.family(), female.family())
        : mixedForms(male, female);
  }

  /** Whether {@link #of} finds a joint to build; threads of two sizes or two forms are never one. */
  static boolean isSound(End.Threaded one, End.Threaded other) {
    if (one.gender() == other.gender() || one.size() != other.size() || !isOfOneForm(one, other)) {
      return false;
    }
    boolean first = one.gender() == Gender.MALE;
    return ofOneForm((first ? one : other).family(), (first ? other : one).family())
        .verdict()
        .isSound();
  }

  static boolean isOfOneForm(End.Threaded one, End.Threaded other) {
    return one.family().form() == other.family().form();
  }

  private static Pairing ofOneForm(ThreadFamily male, ThreadFamily female) {
    Pairing named = OF_ONE_FORM.get(new Key(male, female));
    if (named != null) {
      return named;
    }
    return DRYSEAL.contains(male) || DRYSEAL.contains(female) ? TABLE_NOT_SEEN : OF_NO_STANDARD;
  }

  private static Pairing sizesDiffer(End.Threaded male, End.Threaded female) {
    boolean larger = male.size().compareTo(female.size()) > 0;
    return new Pairing(
        MatingVerdict.DOES_NOT_FIT,
        units -> "The sizes differ: male " + male.size() + ", female " + female.size()
            + male.thread()
                .geometry()
                .flatMap(m -> female.thread().geometry().map(f -> measured(m, f, units)))
                .orElse("")
            + ", so it " + (larger ? "does not enter" : "drops in without catching")
            + (isOfOneForm(male, female)
                ? "."
                : "; and " + male.family().symbol(Gender.MALE) + " and "
                    + female.family().symbol(Gender.FEMALE) + " are threads of two standards."),
        male.family().source());
  }

  private static String measured(PipeThread male, PipeThread female, UnitSystem units) {
    Length end = Length.ofMetres(0.0);
    return " (" + units.saySmall(male.section(Gender.MALE, end).major())
        + " over the crests into a bore of "
        + units.saySmall(female.section(Gender.FEMALE, end).minor()) + ")";
  }

  private static Pairing mixedForms(End.Threaded male, End.Threaded female) {
    Source source = Source.derived("thread forms of ASME B1.20.1 and ISO 7-1 / ISO 228-1");
    String why =
        " 60° flats against 55° rounds leave a spiral path open, and under pressure the parts can separate.";
    return mismatch(male, female)
        .map(mismatch ->
            new Pairing(mismatch.verdict(), units -> mismatch.inWords(units) + why, source))
        .orElseGet(() -> new Pairing(
            MatingVerdict.NOT_TO_BE_RELIED_ON,
            "How far it goes was not worked out." + why,
            source));
  }

  /** How far a pair of two forms and one size goes; empty for all other pairs, and where no table was seen. */
  static Optional<ThreadMismatch> mismatch(End.Threaded male, End.Threaded female) {
    return male.size() == female.size() && !isOfOneForm(male, female)
        ? male.thread()
            .geometry()
            .flatMap(m -> female.thread().geometry().map(f -> new ThreadMismatch(m, f)))
        : Optional.empty();
  }
}
