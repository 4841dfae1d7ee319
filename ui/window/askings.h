#pragma once

#include "openjob/openjob.h"

namespace doorloom {

class Window;

// What the window asks or tells in a box of its own, and what becomes of the answer.

enum class Leaving { Save, Forget, Stay };
Leaving askAboutUnsaved(Window& window);
bool wantsRecovery(Window& window, const OpenJob::Recovered& found);
void askAboutNewerFile(Window& window); // the file has been written by somebody else
void tellOpenElsewhere(Window& window);

void askForTitleBlock(Window& window);
void askToSetAside(Window& window, const Finding& finding);
void askForSheetTitle(Window& window);
void addAnOpening(Window& window);
void askWhatToFind(Window& window);
void askForPaper(Window& window);
void askToDuplicateDoor(Window& window);
void askForConnectionList(Window& window);
void askToEditKind(Window& window);
void askForKindFile(Window& window);
void askToMarkTypical(Window& window);
void askToStampDoors(Window& window);
void askToChangeDoors(Window& window); // as their typical has been changed
void askToUnmarkTypical(Window& window);

void showShortcuts(Window& window);
void showTypedForms(Window& window);
void showCautions(Window& window);

} // namespace doorloom
