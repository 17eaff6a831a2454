package org.airfit.joint;

/** What a search for a chain of adapters found. */
public enum ChainVerdict {
  /** The ends go together without anything between. */
  DIRECT,
  /** One to three adapters join them. */
  THROUGH_ADAPTERS,
  /** No three of the adapters join them. */
  NOT_JOINED
}
