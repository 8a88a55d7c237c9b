/* SPDX-License-Identifier: Apache-2.0 */
/** What a person can do in the window: each thing with its text, its key, its place in a menu and in the list that is searched. */
package oblate.workbench.actions;
