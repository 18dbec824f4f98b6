/**
 * What is printed? The helper's sheet, the timetable and the reports of a session and of a series,
 * as PDF and as one HTML page that needs no other file.
 *
 * <p>Only the desk comes in. Never here: a number worked out or rounded (review and wording did
 * that), a drawing of its own (picture has them), a sheet for the rider (paper.ride has those).
 * Before unsealing the helper's sheet alone holds the order.
 */
package blindlap.paper;
