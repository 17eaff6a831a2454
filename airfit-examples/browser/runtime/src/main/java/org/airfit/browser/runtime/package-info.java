/**
 * What a page's own JavaScript does in place of the compiler's class library, and the compiler's plugin that leads
 * calls here: functions that the class library rounds otherwise than the JVM, the digits of numbers, the tables.
 */
@NullMarked
package org.airfit.browser.runtime;

import org.jspecify.annotations.NullMarked;
