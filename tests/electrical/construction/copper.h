#pragma once

#include "electrical/construction/material.h"

inline const electrical::Material& copper() { return electrical::material_named("copper"); }
