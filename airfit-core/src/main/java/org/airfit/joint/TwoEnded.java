package org.airfit.joint;

import java.util.Optional;
import org.airfit.quantity.Length;

/**
 * A bushing, nipple, coupling, hose tail or any other piece that lies between two ends. A catalogue's part can be one.
 */
public interface TwoEnded {

  /** {@return what people call it} */
  String name();

  /** {@return one of its ends} */
  End one();

  /** {@return its other end; it may be turned round} */
  End other();

  /**
   * {@return the narrowest clear bore through it, as measured or as its maker tells; empty if nobody told it, because
   * the size of its threads does not tell it}
   */
  Optional<Length> smallestBore();
}
