/**
 * A door. Answers the browser and other programs over HTTP: the pages, the routes under {@code
 * /api/v1}, the stream of events, health and figures for monitoring. It asks the rooms and shows
 * what they say; it judges nothing itself. The one HTTP library stays behind this door. Opens doors
 * to the ground and first floors, film's finish list and quantity.
 */
@NullMarked
package coatwright.web;

import org.jspecify.annotations.NullMarked;
