package org.airfit.joint;

import java.util.Map;
import org.airfit.source.Source;
import org.airfit.thread.ThreadFamily;

/** What the standards say of a male thread in a female one of the same flank angle and size. */
record Pairing(MatingVerdict verdict, String reason, Source source) {

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
              "A free-fitting thread only pulls: a cone seat or washer outside the thread must seal, and both parts "
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
          new Key(ThreadFamily.NPTF, ThreadFamily.NPSF),
          new Pairing(
              MatingVerdict.SEALS_DRY,
              "A dryseal straight female thread takes it and seals over few threads, if it is of soft or ductile "
                  + "material.",
              Source.fromMemory("ASME B1.20.3-1976 section 1.4"))),
      Map.entry(
          new Key(ThreadFamily.PTF_SAE_SHORT, ThreadFamily.NPSI),
          new Pairing(
              MatingVerdict.SEALS_DRY,
              "The female thread is made for the short male one, and seals over few threads.",
              B1203)),
      Map.entry(
          new Key(ThreadFamily.PTF_SAE_SHORT, ThreadFamily.PTF_SAE_SHORT),
          new Pairing(
              MatingVerdict.DOES_NOT_FIT,
              "The standard says that the two short threads are not designed for each other: at the limits they may "
                  + "not assemble.",
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
              "R in G is allowed by some documents and not by others, with a jointing medium and full crests, and "
                  + "sits deeper than in Rp; ask"
                  + " the maker.",
              Source.standard(
                  "GOST 6357-81 allows it, the foreword of GB/T 7307-2001 advises against"))),
      Map.entry(
          new Key(ThreadFamily.BSPP, ThreadFamily.BSPP),
          new Pairing(
              MatingVerdict.SEALS_ON_FACE,
              "The thread only pulls: a washer, bonded seal or ring on a face must seal.",
              ThreadFamily.BSPP.source())),
      Map.entry(
          new Key(ThreadFamily.BSPP, ThreadFamily.RP),
          new Pairing(
              MatingVerdict.NOT_TO_BE_RELIED_ON,
              "Rp may be smaller than basic and the male G at basic size, so it may bind; if it turns in freely, "
                  + "only a face can seal it.",
              Source.derived(
                  "tolerances of ISO 7-1 (Rp either way) and ISO 228-1 (G male downward)"))),
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

  static Pairing ofOneForm(ThreadFamily male, ThreadFamily female) {
    return OF_ONE_FORM.getOrDefault(new Key(male, female), OF_NO_STANDARD);
  }
}
