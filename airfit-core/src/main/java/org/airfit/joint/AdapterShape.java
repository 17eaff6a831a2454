package org.airfit.joint;

/** The shapes of standard adapters, in the words of the trade. */
public enum AdapterShape {
  /** Male on both ends, of one family and size. */
  NIPPLE("nipple"),
  /** Male on both ends, of one family and two sizes. */
  REDUCING_NIPPLE("reducing nipple"),
  /** Female on both ends, of one family and size. */
  FEMALE_COUPLING("female coupling"),
  /** Female on both ends, of one family and two sizes. */
  REDUCING_COUPLING("reducing female coupling"),
  /** Male of the larger size outside, female of the smaller size inside, of one family. */
  BUSHING("reducing bushing"),
  /** Female of the larger size, male of the smaller size, of one family. */
  REDUCER("female × male reducer"),
  /** Male on both ends, of two families. */
  ADAPTER_NIPPLE("adapter nipple"),
  /** Female on both ends, of two families. */
  ADAPTER_COUPLING("female adapter coupling"),
  /** Male of one family, female of another. */
  ADAPTER("adapter"),
  /** A female thread that turns freely, NPSM with its seat or a flare nut, and a thread of another family. */
  SWIVEL_ADAPTER("swivel adapter"),
  /** A barb and a thread. */
  HOSE_TAIL("hose tail"),
  /** Two barbs for one bore. */
  HOSE_JOINER("hose joiner"),
  /** Two barbs for two bores. */
  REDUCING_HOSE_JOINER("reducing hose joiner"),
  /** A piece of hose between two barbs. */
  HOSE_LENGTH("length of hose"),
  /** A push-in end and a thread. */
  PUSH_IN_CONNECTOR("push-in connector"),
  /** Two push-in ends for one tube. */
  PUSH_IN_UNION("push-in union"),
  /** Two push-in ends for two tubes, of inch and metric sizes too. */
  REDUCING_PUSH_IN_UNION("reducing push-in union"),
  /** A piece of tube between two push-in ends. */
  TUBE_LENGTH("length of tube"),
  /** Two male flares of one angle and one thread. */
  FLARE_UNION("flare union"),
  /** Two flare nuts of one angle and one thread that turn freely. */
  SWIVEL_UNION("swivel union"),
  /** A male flare and a pipe thread. */
  FLARE_ADAPTER("flare adapter"),
  /** A stud with O-ring for a port, and a pipe thread, a flare or a flare nut. */
  PORT_ADAPTER("port adapter"),
  /** The head of a claw coupling and a barb. */
  CLAW_TAIL("claw hose tail"),
  /** The head of a claw coupling and a pipe thread. */
  CLAW_THREAD("claw adapter");

  private final String label;

  AdapterShape(String label) {
    this.label = label;
  }

  /** {@return the shape in the words of the trade, such as "reducing bushing"} */
  public String label() {
    return label;
  }
}
