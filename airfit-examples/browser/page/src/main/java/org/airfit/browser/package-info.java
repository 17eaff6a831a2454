/**
 * The library inside a web page: what JavaScript calls.
 *
 * <p>May use: the calls, and TeaVM's bridge to JavaScript.
 */
@NullMarked
package org.airfit.browser;

import org.jspecify.annotations.NullMarked;
