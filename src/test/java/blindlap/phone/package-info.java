@NullMarked
package blindlap.phone;

import org.jspecify.annotations.NullMarked;
