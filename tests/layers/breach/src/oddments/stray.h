#pragma once  // breach
