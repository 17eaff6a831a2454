/**
 * What is compared between the JVM and JavaScript. Not shipped.
 *
 * <p>May use: the library, and of TeaVM's bridge the mark of what is exported.
 */
@NullMarked
package org.airfit.browser.probe;

import org.jspecify.annotations.NullMarked;
