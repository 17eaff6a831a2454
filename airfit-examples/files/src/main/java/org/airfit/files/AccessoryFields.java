package org.airfit.files;

import java.util.List;
import org.airfit.joint.End;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.select.Accessory;
import org.airfit.select.PartFacts;

/** The fields of what goes with the parts of a catalogue: clamps, sealant and the like. */
final class AccessoryFields {

  private static final String CLAMP = "hose clamp";
  private static final String SEALANT = "thread sealant";
  private static final String WASHER = "sealing washer";
  private static final String RESTRAINT = "whip restraint";
  private static final String DRAIN = "drain";
  private static final String CAP = "end cap";
  private static final String HOOK = "hose hook";

  /** The words for what goes with parts. */
  static final List<String> KINDS = List.of(CLAMP, SEALANT, WASHER, RESTRAINT, DRAIN, CAP, HOOK);

  private AccessoryFields() {}

  /** An accessory of a catalogue. */
  static Accessory of(Field item, PartFields reader, ReferenceSet set) throws WrongFileException {
    String kind =
        item.field("kind", "such as hose clamp or thread sealant").oneOf(KINDS, word -> word);
    PartFacts facts = reader.factsOfCatalogue(item);
    Accessory accessory = switch (kind) {
      case CLAMP -> clamp(item, facts);
      case SEALANT ->
        new Accessory.ThreadSealant(
            facts,
            item.field("upTo", "the largest thread it is for, such as \"2\"")
                .as(NominalThreadSize::parse));
      case WASHER -> washer(item, facts);
      case RESTRAINT -> restraint(item, facts);
      case DRAIN -> new Accessory.Drain(facts);
      case CAP ->
        new Accessory.EndCap(
            facts, PartFields.profileId(item.field("profile", "the id of a profile"), set));
      default -> new Accessory.HoseHook(facts);
    };
    item.requireNothingElse();
    return accessory;
  }

  /** The thread is read as an end, so that a slip is noticed. */
  private static Accessory washer(Field item, PartFacts facts) throws WrongFileException {
    Field thread = item.field("thread", "the thread it goes on, such as \"G 1/4\"");
    thread.as(text -> End.parse(text + " male"));
    String named = thread.text().strip();
    return item.build(() -> new Accessory.SealingWasher(facts, named));
  }

  private static Accessory clamp(Field item, PartFacts facts) throws WrongFileException {
    Length from =
        item.field("from", "the least outside diameter, such as \"16 mm\"").as(Length::parse);
    Length to =
        item.field("to", "the greatest outside diameter, such as \"22 mm\"").as(Length::parse);
    return item.build(() -> new Accessory.HoseClamp(facts, from, to));
  }

  private static Accessory restraint(Field item, PartFacts facts) throws WrongFileException {
    HoseBore from = item.field("from", "the smallest hose, such as \"1/2 in\"").as(HoseBore::parse);
    HoseBore to = item.field("to", "the largest hose, such as \"1 in\"").as(HoseBore::parse);
    return item.build(() -> new Accessory.WhipRestraint(facts, from, to));
  }
}
