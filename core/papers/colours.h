#pragma once

#include "model/colours.h"
