/**
 * The library inside a web page: what JavaScript calls, and what makes its numbers those of the JVM.
 *
 * <p>May use: the library, the files and the sheets, and TeaVM's bridge to JavaScript; {@code Calls} and {@code Given}
 * use no bridge, so that the JVM's tests ask them the same.
 */
@NullMarked
package org.airfit.browser;

import org.jspecify.annotations.NullMarked;
